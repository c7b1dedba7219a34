import { describe, expect, test } from 'vitest';
import { floorPlanSchema } from '../../../src/domain/carrying/carrying-rules.ts';
import { cashNeed } from '../../../src/domain/carrying/cash-need.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { localDateSchema } from '../../../src/domain/time/local-date.ts';

const date = (text: string) => localDateSchema.parse(text);
const sums = (allIn: number, financed: number, cash: number) => ({
  allIn: cents(allIn),
  financed: cents(financed),
  cash: cents(cash),
});

describe('the cash that a car needs', () => {
  test('is all of it when it can’t be floored, by the day the sale wants it', () => {
    const need = cashNeed(sums(12_345_00, 0, 13_145_00), { payBy: date('2026-12-01') });
    expect(need.atOnce).toBe(12_345_00);
    expect(need.due).toEqual([
      { what: 'sale', cents: 12_345_00, date: '2026-12-01' },
      { what: 'recon', cents: 800_00 },
    ]);
    expect(need.sentence).toBe('It takes $12,345 of your own cash by Tue Dec 1, and $800 for recon.');
  });

  test('is the rest when it is floored, and then what each curtailment pays back', () => {
    const plan = floorPlanSchema.parse({
      annualRatePpm: 90_000,
      curtailments: [
        { day: 60, sharePpm: 100_000 },
        { day: 90, sharePpm: 200_000 },
      ],
    });
    const need = cashNeed(sums(12_345_00, 11_500_00, 845_00), { date: date('2026-11-28') }, plan);
    expect(need.due).toEqual([
      { what: 'sale', cents: 845_00 },
      { what: 'curtailment', cents: 1_150_00, date: '2027-01-27' },
      { what: 'curtailment', cents: 2_300_00, date: '2027-02-26' },
    ]);
    expect(need.sentence).toBe('The floor plan pays $11,500; you pay $845 by the venue’s payment deadline.');
  });
});
