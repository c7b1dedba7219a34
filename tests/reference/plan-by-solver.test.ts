import fc from 'fast-check';
import loadHighs from 'highs';
import { expect, test } from 'vitest';
import { planCeiling, planValue } from '../../src/domain/plan/worked-plan.ts';
import { biddingOf, meansOf, type Point } from '../domain/plan/worlds.ts';

/**
 * HiGHS (Huangfu & Hall, Mathematical Programming Computation 10, 2018), a solver of linear and whole-number programs, as a judge of
 * the plan: where every bid surely wins, the plan is a knapsack; where it may lose, no plan earns more than the linear program in
 * which cash and places only have to last on average (Talluri & van Ryzin, Management Science 44, 1998).
 */
const highs = await loadHighs();

interface Lot {
  readonly cash: number;
  readonly profit: number;
  readonly chance: number;
}
const lots = fc.array(
  fc.record({
    cash: fc.integer({ min: 1, max: 30 }),
    profit: fc.integer({ min: 1, max: 40 }),
    chance: fc.integer({ min: 1, max: 9 }).map((tenths) => tenths / 10),
  }),
  { minLength: 2, maxLength: 14 },
);
const worlds = fc.record({ lots, cash: fc.integer({ min: 10, max: 90 }), places: fc.integer({ min: 1, max: 6 }) });

const sum = (terms: readonly Lot[], of: (lot: Lot) => number): string =>
  terms.map((lot, i) => `${of(lot)} x${i}`).join(' + ');

/** The most that `x` lots earn whose cash and places do not run out; whole lots, or parts of lots. */
function solved(given: readonly Lot[], cash: number, places: number, whole: boolean): number {
  const names = given.map((_, i) => `x${i}`);
  const { Status, ObjectiveValue } = highs.solve(
    [
      `Maximize obj: ${sum(given, ({ profit, chance }) => profit * chance)}`,
      `Subject To cash: ${sum(given, (lot) => lot.cash * lot.chance)} <= ${cash}`,
      `places: ${sum(given, ({ chance }) => chance)} <= ${places}`,
      `Bounds ${names.map((name) => `0 <= ${name} <= 1`).join('\n')}`,
      ...(whole ? [`General ${names.join(' ')}`] : []),
      'End',
    ].join('\n'),
  );
  expect(Status).toBe('Optimal');
  return ObjectiveValue;
}

const oneByOne = (given: readonly Lot[]) => given.map((lot: Point, i) => ({ at: i, lots: [biddingOf([lot])] }));

test('where every bid wins the plan earns what the solver’s knapsack over cash and places does', () => {
  fc.assert(
    fc.property(worlds, ({ lots: given, cash, places }) => {
      const sure = given.map((lot) => ({ ...lot, chance: 1 }));
      const best = solved(sure, cash, places, true);
      expect(planValue(oneByOne(sure), meansOf(cash, { places })) / 100).toBeCloseTo(best, 6);
      const atOnce = [{ at: 0, lots: sure.slice(0, 5).map((lot) => biddingOf([lot])) }];
      expect(planValue(atOnce, meansOf(cash, { places })) / 100).toBeLessThanOrEqual(best + 1e-6);
    }),
    { numRuns: 12 },
  );
});

test('where bids may lose neither the plan nor its ceiling earns more than the linear program in which money lasts on average', () => {
  fc.assert(
    fc.property(worlds, ({ lots: given, cash, places }) => {
      const bound = solved(given, cash, places, false);
      const [value, ceiling] = [planValue, planCeiling].map(
        (of) => of(oneByOne(given), meansOf(cash, { places })) / 100,
      );
      expect(value).toBeLessThanOrEqual((ceiling as number) + 1e-9);
      expect(ceiling).toBeLessThanOrEqual(bound + 1e-6);
      // With enough for every car nothing has to last, and all three are the same.
      const all = given.reduce((total, lot) => total + lot.cash, 0);
      const rich = planValue(oneByOne(given), meansOf(all, { places: given.length })) / 100;
      expect(rich).toBeCloseTo(solved(given, all, given.length, false), 6);
    }),
    { numRuns: 25 },
  );
});
