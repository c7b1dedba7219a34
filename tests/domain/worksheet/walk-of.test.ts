import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ppm } from '../../../src/domain/money/rate.ts';
import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import { SETUP, sheetOf, van } from '../appraisal/lot-for-tests.ts';

const NEW_ONE = { kind: 'new', label: 'This year’s, new', list: 19_000_00, rebate: 1_000_00 };
const total = (facts: object, setup = SETUP) => {
  const { from, steps, to } = walkOf(sheetOf(van(facts), setup));
  return steps.reduce((left, step) => left - step.cents, from.cents as number) - to;
};

describe('the walk from retail down to the max bid', () => {
  test('has a step of its own for the ceiling, with its reason and the price it stops at', () => {
    const sheet = sheetOf(van({ ceilings: [NEW_ONE] }));
    const { from, steps } = walkOf(sheet);
    expect(from).toMatchObject({ label: 'Retail before the cap', cents: 18_000_00 });
    expect(steps[0]).toMatchObject({ group: 'ceiling', label: 'Capped by a substitute: This year’s, new, $18,000' });
    expect(from.cents - (steps[0]?.cents ?? 0)).toBe(sheet.deal.retail);
    // The figure before the cap has its own range, not the lower end of what the cap leaves.
    expect(from.range).toEqual({ low: 15_325_75, high: 21_140_88 });
    const far = walkOf(sheetOf(van({ ceilings: [{ ...NEW_ONE, list: 12_000_00 }] })));
    expect(far.from.range).toEqual({ low: 15_325_75, high: 21_140_88 });
  });

  test('has none where nothing holds retail down', () => {
    const { from, steps } = walkOf(sheetOf(van()));
    expect(from.label).toBe('Expected retail');
    expect(steps.map(({ group }) => group)).not.toContain('ceiling');
  });

  test('says what keeps the rest back: the steps of the sale, the chance of a loss, or a sealed sale', () => {
    const kept = (facts: object, limit = 1_000_000) =>
      walkOf(sheetOf(van(facts), { ...SETUP, rules: { ...SETUP.rules, lossChancePpm: ppm(limit) } })).steps.at(-1);
    expect(kept({})?.group).toBe('slack');
    expect(kept({}, 20_000)).toMatchObject({ group: 'risk-cap', label: 'Held back for the chance of a loss' });
    expect(kept({ sealed: { rival: { low: 11_000_00, likely: 12_000_00, high: 13_000_00 } } })?.group).toBe('sealed');
  });

  test('of a car that only the limit on the chance of a loss refuses names it, beside a profit that would do', () => {
    const claims = [{ about: 'other', statement: 'Runs', worthIfFalse: 40_000_00 }];
    const setup = { ...SETUP, rules: { ...SETUP.rules, lossChancePpm: ppm(50_000) } };
    const sheet = sheetOf(van({ claims, transport: 0 }), setup);
    expect(sheet.result).toMatchObject({ maxBid: null, limitedBy: 'loss-chance' });
    expect(sheet.result.breakdown.profit).toBeGreaterThan(sheet.result.breakdown.required);
    expect(walkOf(sheet).steps.at(-1)?.group).toBe('risk-cap');
    const hopeless = sheetOf(van({ retail: { likely: 1_000_00 } }), setup);
    expect(hopeless.result).toMatchObject({ maxBid: null, limitedBy: 'nothing-pays' });
  });

  test('always adds up, to the cent, whatever is known and doubted', () => {
    fc.assert(
      fc.property(
        fc.record({
          likely: fc.integer({ min: 100_000, max: 9_000_000 }),
          list: fc.integer({ min: 100_000, max: 9_000_000 }),
          worthIfFalse: fc.integer({ min: 0, max: 900_000 }),
          recon: fc.integer({ min: 0, max: 300_000 }),
          comps: fc.array(fc.integer({ min: 100_000, max: 9_000_000 }), { maxLength: 4 }),
          titleId: fc.constantFrom('clean', 'flood'),
          sealed: fc.boolean(),
        }),
        ({ likely, list, worthIfFalse, recon, comps, titleId, sealed }) => {
          const facts = {
            retail: { likely },
            ceilings: [{ ...NEW_ONE, list }],
            claims: [{ about: 'drive', statement: 'Four-wheel drive', worthIfFalse }],
            recon: [{ label: 'Tires', amount: { low: 0, likely: recon, high: 2 * recon } }],
            comps: comps.map((price) => ({ kind: 'sold', price, miles: 60_000, year: 2020 })),
            titleId,
            ...(sealed && { sealed: { rival: { likely: Math.round(likely * 0.6) } } }),
          };
          expect(total(facts)).toBe(0);
        },
      ),
      { numRuns: 60 },
    );
  });
});
