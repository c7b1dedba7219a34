import { describe, expect, test } from 'vitest';
import { vinSchema } from '../../src/domain/vin/vin.ts';
import { isYearCode, modelYearOf } from '../../src/domain/vin/vin-year.ts';

const year = (text: string, weight: 'light' | 'heavy' | 'unknown', thisYear = 2026) =>
  modelYearOf(vinSchema.parse(text), weight, thisYear);

describe('the model year', () => {
  test('of a light vehicle with a digit in position 7 is 1980 to 2009 (49 CFR 565.15, note to Table VII)', () => {
    expect(year('1G4AH59H45G118341', 'light')).toEqual({ candidates: [2005], certain: true });
  });

  test('of a light vehicle with a letter in position 7 is 2010 to 2039 (49 CFR 565.15, note to Table VII)', () => {
    expect(year('1J9RP1A36A1644345', 'light')).toEqual({ candidates: [2010], certain: true });
  });

  test('of a heavy vehicle stays open between the two, whatever position 7 says', () => {
    expect(year('1M8GDM9AXKP042788', 'heavy')).toEqual({ candidates: [1989, 2019], certain: false });
    expect(year('1M8GDMAAXKP042788', 'heavy')).toEqual({ candidates: [1989, 2019], certain: false });
  });

  test('of a vehicle of unknown weight names the likelier first and settles nothing', () => {
    expect(year('1M8GDM9AXKP042788', 'unknown')).toEqual({ candidates: [1989, 2019], certain: false });
    expect(year('1M8GDMAAXKP042788', 'unknown')).toEqual({ candidates: [2019, 1989], certain: false });
  });

  test('is never one that has not been built yet', () => {
    expect(year('1G4AH59H45G118341', 'heavy')).toEqual({ candidates: [2005], certain: true });
    // A light vehicle whose position 7 would make it 2035: the rule was broken, so the year is said without certainty.
    expect(year('1G4AH5AH45G118341', 'light')).toEqual({ candidates: [2005], certain: false });
    expect(year('1G4AH5AH45G118341', 'light', 2034)).toEqual({ candidates: [2035], certain: true });
  });

  test.each(['0', 'U', 'Z'])('is missing, not wrong, when position 10 is %s', (code) => {
    expect(year(`1G4AH59H4${code}G118341`, 'light')).toEqual({ candidates: [], certain: false });
  });

  test('runs through thirty codes from A = 1980 and 2010 to 9 = 2009 and 2039 (49 CFR 565.15, Table VII)', () => {
    const codes = [...'ABCDEFGHJKLMNPRSTVWXY123456789'];
    expect(codes).toHaveLength(30);
    codes.forEach((code, i) => {
      expect(year(`1G4AH59H4${code}G118341`, 'light', 2040).candidates).toEqual([1980 + i]);
      expect(year(`1G4AH5AH4${code}G118341`, 'light', 2040).candidates).toEqual([2010 + i]);
    });
    for (const never of 'IOQUZ0') expect(isYearCode(never)).toBe(false);
  });
});
