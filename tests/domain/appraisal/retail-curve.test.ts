import { describe, expect, test } from 'vitest';
import { appraisedRetail } from '../../../src/domain/appraisal/appraised-retail.ts';
import { retailCurve } from '../../../src/domain/appraisal/retail-curve.ts';
import { type LotFacts, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { DEFAULT_ESTIMATION } from '../../../src/domain/retail/estimation.ts';

const facts = (over: object): LotFacts => lotFactsSchema.parse({ miles: 60_000, year: 2020, ...over });
const guess = { low: 16_000_00, likely: 18_000_00, high: 20_000_00 };
const comps = [{ kind: 'sold', price: 18_400_00, miles: 60_000, year: 2020 }];

/** Share of the area under the curve that lies between the two ends of the range. */
function within(lot: LotFacts): number {
  const retail = appraisedRetail(lot, DEFAULT_ESTIMATION, 120);
  if (retail === undefined) throw new Error('no retail');
  const points = retailCurve(retail, cents(2_000_00), cents(60_000_00), 4000);
  const area = (some: typeof points) => some.reduce((sum, { height }) => sum + height, 0);
  return area(points.filter(({ price }) => price >= retail.low && price <= retail.high)) / area(points);
}

describe('the curve of a retail range', () => {
  test.each([
    ['a guess alone', { retail: guess }],
    ['one comparable', { comps }],
    ['both', { retail: guess, comps }],
  ])('holds eight in ten between its two ends, with %s', (_, over) => {
    expect(within(facts(over))).toBeCloseTo(0.8, 2);
  });

  test('is highest near the figure in the middle, and 1 there', () => {
    const retail = appraisedRetail(facts({ retail: guess, comps }), DEFAULT_ESTIMATION, 120);
    if (retail === undefined) throw new Error('no retail');
    const points = retailCurve(retail, cents(12_000_00), cents(26_000_00), 200);
    const top = points.find(({ height }) => height === 1);
    expect(Math.abs((top?.price ?? 0) - retail.mean)).toBeLessThan(retail.mean * 0.03);
    expect(points.every(({ height }) => height >= 0 && height <= 1)).toBe(true);
  });
});
