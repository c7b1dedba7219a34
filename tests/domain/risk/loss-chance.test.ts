import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { HoldCase } from '../../../src/domain/carrying/hold-spread.ts';
import { dealTotals } from '../../../src/domain/deal/price-sums.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { lossChanceCap, type RiskInputs, riskAt } from '../../../src/domain/risk/risk-at.ts';
import { dealArbitrary } from '../deal/random-deal.ts';

const hold = fc
  .array(fc.record({ days: fc.integer({ min: 1, max: 120 }), flat: fc.nat({ max: 60_000 }) }), {
    minLength: 1,
    maxLength: 9,
  })
  .map((list): readonly HoldCase[] =>
    list.map(({ days, flat }) => ({ chance: 1 / list.length, floor: days * 2e-4, cash: days * 3e-4, flat })),
  );
const cost = fc
  .tuple(fc.nat({ max: 60_000 }), fc.nat({ max: 60_000 }), fc.nat({ max: 150_000 }), fc.constantFrom(0.2, 0.7, 1))
  .map(([low, more, most, chance]) => ({ low, likely: low + more, high: low + more + most, chance }));

const trial = fc.record({
  deal: dealArbitrary(4_000_000),
  hold,
  costs: fc.array(cost, { maxLength: 4 }),
  sigma: fc.constantFrom(0, 0.03, 0.08, 0.12, 0.3),
  capAt: fc.option(fc.integer({ min: 70, max: 130 }), { nil: undefined }),
  share: fc.integer({ min: 0, max: 100 }),
});

function inputsOf({ deal, hold: cases, costs, sigma, capAt }: typeof trial extends fc.Arbitrary<infer T> ? T : never) {
  const mean = Math.max(1, deal.retail);
  const cap = capAt === undefined ? undefined : Math.round((mean * capAt) / 100);
  return { retail: { mean, sigma, cap }, costs, hold: () => ({ few: cases, byDay: cases }) } satisfies RiskInputs;
}

describe('the cap on the chance of a loss', () => {
  test('decides at every price as the full sum over all cases does', () => {
    fc.assert(
      fc.property(trial, (given) => {
        const inputs = inputsOf(given);
        const { titled } = dealTotals(given.deal);
        const price = cents(Math.round((titled * given.share) / 100));
        const { lossChance } = riskAt(given.deal, price, inputs);
        for (const most of [0, 0.05, 0.25, 0.5, lossChance - 1e-5, lossChance + 1e-5]) {
          const highest = ppm(Math.min(999_999, Math.max(0, Math.round(most * 1e6))));
          // Nearer than this the order of additions decides, which the cap allows for.
          if (Math.abs(lossChance - highest / 1e6) < 2e-9) continue;
          expect(lossChanceCap(given.deal, inputs, highest)?.(price)).toBe(lossChance <= highest / 1e6);
        }
      }),
      { numRuns: 150 },
    );
  });
});
