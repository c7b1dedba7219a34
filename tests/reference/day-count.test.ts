import { describe, expect, test } from 'vitest';
import { type DayCount, floorPlanSchema } from '../../src/domain/carrying/carrying-rules.ts';
import { daysBetween, yearShare } from '../../src/domain/carrying/day-count.ts';
import { floorPlanInterest } from '../../src/domain/carrying/floor-plan-interest.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { type LocalDate, localDateSchema } from '../../src/domain/time/local-date.ts';

const date = (text: string): LocalDate => localDateSchema.parse(text);
const plan = (annualRatePpm: number, dayCount: DayCount, curtailments: object[] = []) =>
  floorPlanSchema.parse({ annualRatePpm, dayCount, curtailments });

describe('the 30/360 family', () => {
  // ISDA's 30/360 worksheet of 2008-12-22, as encoded in the QuantLib test suite.
  test.each([
    ['2006-08-20', '2007-02-20', 184, 180, 180, 180],
    ['2006-08-31', '2007-02-28', 181, 178, 178, 180],
    ['2007-02-28', '2007-08-31', 184, 183, 182, 180],
    ['2007-08-31', '2008-02-29', 182, 179, 179, 180],
    ['2008-02-29', '2008-08-31', 184, 182, 181, 180],
    ['2006-01-31', '2006-02-28', 28, 28, 28, 30],
    ['2006-02-28', '2006-03-03', 3, 5, 5, 3],
    ['2006-02-14', '2006-02-28', 14, 14, 14, 16],
    ['2006-09-30', '2006-10-31', 31, 30, 30, 30],
    ['2006-10-31', '2006-11-28', 28, 28, 28, 28],
    ['2008-02-28', '2008-08-31', 185, 183, 182, 182],
    ['2008-02-29', '2009-02-28', 365, 359, 359, 360],
  ])('from %s to %s counts %d actual days as %d, %d and %d', (from, to, actual, bond, euro, isda) => {
    expect(daysBetween(date(from), date(to))).toBe(actual);
    expect(yearShare('30/360', date(from), date(to)).days).toBe(bond);
    expect(yearShare('30E/360', date(from), date(to)).days).toBe(euro);
    expect(yearShare('30E/360 ISDA', date(from), date(to)).days).toBe(isda);
  });

  test('keeps the last of February on the day the debt ends, under 30E/360 ISDA (2006 Definitions, 4.16 h)', () => {
    const end = date('2009-02-28');
    expect(yearShare('30E/360 ISDA', date('2008-08-31'), end).days).toBe(180);
    expect(yearShare('30E/360 ISDA', date('2008-08-31'), end, end).days).toBe(178);
  });
});

describe('the actual counts', () => {
  // Actual/actual: ISDA's 1998 paper on market conventions, numbers in the QuantLib test suite. Others computed independently.
  test.each([
    ['2003-11-01', '2004-05-01', 182, 0.497724380567, 0.505555555556, 0.498630136986],
    ['1999-02-01', '1999-07-01', 150, 0.41095890411, 0.416666666667, 0.41095890411],
    ['1999-07-01', '2000-07-01', 366, 1.0013773486, 1.016666666667, 1.002739726027],
    ['2002-08-15', '2003-07-15', 334, 0.915068493151, 0.927777777778, 0.915068493151],
    ['1999-07-30', '2000-01-30', 184, 0.503892506924, 0.511111111111, 0.504109589041],
    ['2000-01-30', '2000-06-30', 152, 0.415300546448, 0.422222222222, 0.416438356164],
  ])('from %s to %s take %d days for the right part of a year', (from, to, days, actual, by360, by365) => {
    const part = (rule: DayCount) => {
      const share = yearShare(rule, date(from), date(to));
      expect(share.days).toBe(days);
      return share.numerator / share.denominator;
    };
    expect(part('actual/actual')).toBeCloseTo(actual, 10);
    expect(part('actual/360')).toBeCloseTo(by360, 10);
    expect(part('actual/365')).toBeCloseTo(by365, 10);
  });
});

describe('interest on one car', () => {
  test.each([
    // Deitz & Southam, Contemporary Business Mathematics, ch. 13, example G and concept check.
    [800_000_000, 90_000, 'actual/360', '2026-01-01', '2026-05-01', 24_000_000],
    [800_000_000, 90_000, 'actual/365', '2026-01-01', '2026-05-01', 23_671_233],
    [400_000, 70_000, 'actual/365', '2026-01-01', '2026-06-30', 13_808],
    // The Mathematics of Money, exercises 1.2.5 and 1.2.6.
    [100_000, 86_000, 'actual/365', '2026-01-01', '2026-05-01', 2827],
    [12_000_000, 94_500, 'actual/365', '2026-01-01', '2026-05-31', 466_027],
    // Computed independently.
    [400_000, 70_000, 'actual/360', '2026-01-01', '2026-06-30', 14_000],
    [100_000, 86_000, 'actual/360', '2026-01-01', '2026-05-01', 2867],
    [1_282_500, 87_500, 'actual/360', '2026-03-09', '2026-04-20', 13_092],
    [1_282_500, 87_500, 'actual/365', '2026-03-09', '2026-04-20', 12_913],
    [1_282_500, 87_500, '30/360', '2026-03-09', '2026-04-20', 12_780],
    [1_282_500, 87_500, 'actual/360', '2026-03-09', '2026-04-08', 9352],
  ] as const)('on %d cents at %d ppm by %s from %s to %s is %d cents', (advance, rate, rule, from, to, expected) => {
    expect(floorPlanInterest(cents(advance), plan(rate, rule), date(from), date(to)).interest).toBe(expected);
  });

  test('is rounded once, at the end: 42 rounded days would come to 131.04', () => {
    const day = floorPlanInterest(cents(1_282_500), plan(87_500, 'actual/360'), date('2026-03-09'), date('2026-03-10'));
    expect(day.interest * 42).toBe(13_104);
  });

  test('falls as curtailments are paid (computed independently)', () => {
    const tenths = [
      { day: 60, sharePpm: 100_000 },
      { day: 90, sharePpm: 100_000 },
    ];
    const from = date('2026-03-09');
    const to = date('2026-07-07');
    const paid = floorPlanInterest(cents(1_282_500), plan(87_500, 'actual/360', tenths), from, to);
    expect(paid.interest).toBe(34_601);
    expect(paid.stretches.map(({ days, owed }) => [days, owed])).toEqual([
      [60, 1_282_500],
      [30, 1_154_250],
      [30, 1_026_000],
    ]);
    expect(paid.stillOwed).toBe(1_026_000);
    expect(floorPlanInterest(cents(1_282_500), plan(87_500, 'actual/360'), from, to).interest).toBe(37_406);
  });
});
