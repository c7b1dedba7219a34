import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDigitMatches, expectedCheckDigit, VIN_CHARACTERS } from '../../../src/domain/vin/check-digit.ts';
import { examineVin } from '../../../src/domain/vin/examine-vin.ts';
import { type Vin, vinSchema } from '../../../src/domain/vin/vin.ts';

const vin = (text: string): Vin => vinSchema.parse(text);
const examine = (text: string, known: { year?: number; weight?: 'light' | 'heavy' } = {}) =>
  examineVin(vin(text), { thisYear: 2026, ...known });

describe('examining a VIN', () => {
  test('finds nothing to say against a right one that agrees with the listing', () => {
    const report = examine('1J9RP1A36A1644345', { year: 2010, weight: 'light' });
    expect(report.doubts).toEqual([]);
    expect(report.repairs).toEqual([]);
  });

  test('says what position 9 should be, and that it may be a car of another market', () => {
    expect(examine('1G4AH59H55G118341').doubts).toEqual([
      {
        kind: 'check-digit',
        positions: [9],
        message: 'Position 9 should be 4, is 5: a typing error, or not a US-market car.',
      },
    ]);
  });

  test('says when the listing states another year', () => {
    expect(examine('1J9RP1A36A1644345', { year: 2012, weight: 'light' }).doubts).toEqual([
      {
        kind: 'year-differs',
        positions: [7, 10],
        message: 'The VIN says 2010 (position 10 is A, position 7 is a letter); the listing says 2012.',
      },
    ]);
  });

  test('does not contradict a heavy truck of either of its two years', () => {
    expect(examine('1M8GDM9AXKP042788', { year: 1989, weight: 'heavy' }).doubts).toEqual([]);
    expect(examine('1M8GDM9AXKP042788', { year: 2019, weight: 'heavy' }).doubts).toEqual([]);
    expect(examine('1M8GDM9AXKP042788', { year: 2018, weight: 'heavy' }).doubts[0]?.message).toBe(
      'The VIN says 1989 or 2019 (position 10 is K); the listing says 2018.',
    );
  });

  test('does not contradict a truck of unknown weight by the rule for light ones', () => {
    expect(examine('1M8GDM9AXKP042788', { year: 2019 }).doubts).toEqual([]);
  });

  test('doubts a missing year code and letters among the last four, and says nothing of a year then', () => {
    const kinds = examine('WZZZZZZZZUZ0000A1', { year: 2015 }).doubts.map((doubt) => doubt.kind);
    expect(kinds).toEqual(['check-digit', 'year-code', 'serial']);
  });

  test('reads the maker code, six characters long when the third is 9 (49 CFR 565.15(a))', () => {
    expect(examine('1J9RP1A36A1644345').maker).toEqual({ wmi: '1J9', smallMaker: '1J9644', origin: 'United States' });
    expect(examine('1M8GDM9AXKP042788').maker).toEqual({ wmi: '1M8', origin: 'United States' });
  });

  test('leaves the origin open where the first character does not settle it', () => {
    const origins = ['7', '3', 'J', 'W', 'C', 'L', '9'].map(
      (first) => examine(`${first}1111111111111111`).maker.origin,
    );
    expect(origins[0]).toContain('or the United States');
    expect(origins[1]).toContain('or another country');
    expect(origins.slice(2)).toEqual(['Japan', 'Europe', 'Africa', 'Asia', 'South America']);
  });
});

describe('repairs of a mistyped VIN', () => {
  const character = fc.constantFrom(...VIN_CHARACTERS);
  const realistic = fc
    .tuple(
      fc.array(character, { minLength: 9, maxLength: 9 }),
      fc.constantFrom(...'ABCDEFGHJKLMNPRSTVWXY123456789'),
      fc.array(character, { minLength: 3, maxLength: 3 }),
      fc.integer({ min: 0, max: 9999 }),
    )
    .map(([head, code, mid, serial]) => vin([...head, code, ...mid, String(serial).padStart(4, '0')].join('')))
    .map((text) => vin(text.slice(0, 8) + expectedCheckDigit(text) + text.slice(9)));

  test('include the right one after any single slip that the check digit shows', () => {
    fc.assert(
      fc.property(realistic, fc.integer({ min: 0, max: 16 }), character, (right, index, wrong) => {
        const typed = vin(right.slice(0, index) + wrong + right.slice(index + 1));
        fc.pre(!checkDigitMatches(typed));
        expect(examineVin(typed, { thisYear: 2026 }).repairs.map((repair) => repair.vin)).toContain(right);
      }),
    );
  });

  test('include the right one after two neighbors were swapped', () => {
    fc.assert(
      fc.property(realistic, fc.integer({ min: 0, max: 15 }), (right, i) => {
        const typed = vin(right.slice(0, i) + right.charAt(i + 1) + right.charAt(i) + right.slice(i + 2));
        fc.pre(!checkDigitMatches(typed));
        expect(examineVin(typed, { thisYear: 2026 }).repairs.map((repair) => repair.vin)).toContain(right);
      }),
    );
  });

  test('all have a right check digit, differ in one place or two neighbors, and are offered once', () => {
    fc.assert(
      fc.property(realistic, fc.integer({ min: 0, max: 16 }), character, (right, index, wrong) => {
        const typed = vin(right.slice(0, index) + wrong + right.slice(index + 1));
        const { repairs } = examineVin(typed, { thisYear: 2026 });
        for (const repair of repairs) {
          expect(repair.checkDigitMatches && checkDigitMatches(repair.vin)).toBe(true);
          expect(repair.positions.length).toBeLessThanOrEqual(2);
          expect(repair.positions.length === 1 || repair.positions[1] === (repair.positions[0] ?? 0) + 1).toBe(true);
        }
        expect(new Set(repairs.map((repair) => repair.vin)).size).toBe(repairs.length);
      }),
    );
  });

  test('put look-alikes first, and the check digit itself last', () => {
    const { repairs } = examine('1J9PP1A36A1644345');
    expect(repairs[0]).toMatchObject({ vin: '1J9RP1A36A1644345', change: 'position 4: R for P' });
    expect(repairs.at(-1)?.positions).toEqual([9]);
  });
});
