import fc from 'fast-check';
import type { CostLine, Deal } from '../../../src/domain/deal/deal.ts';
import { type FeeTable, feeTableSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { factor, PPM, ppm } from '../../../src/domain/money/rate.ts';
import { ROUNDING_MODES } from '../../../src/domain/money/rounding.ts';
import { type Increments, incrementsSchema } from '../../../src/domain/price/increments.ts';

/** Random deals of every shape: flat and percent bands, minimums, maximums, fees that fall, odd cents, bands of steps. */

const amount = (min: number, max: number) =>
  // Round dollars are what schedules use; odd cents are what rounding trips over.
  fc.oneof(
    fc.integer({ min: Math.ceil(min / 2500), max: Math.floor(max / 2500) }).map((n) => n * 2500),
    fc.integer({ min, max }),
  );

const bandFee = fc.oneof(
  { weight: 3, arbitrary: fc.record({ flatCents: amount(0, 80_000) }) },
  {
    weight: 3,
    arbitrary: fc
      .record({
        flatCents: fc.option(amount(0, 30_000), { nil: 0 }),
        ratePpm: fc.integer({ min: 0, max: 150_000 }),
        least: fc.option(amount(0, 40_000), { nil: undefined }),
        room: fc.option(amount(0, 60_000), { nil: undefined }),
      })
      .map(({ flatCents, ratePpm, least, room }) => ({
        flatCents,
        ratePpm,
        ...(least !== undefined && { minimumCents: least }),
        ...(room !== undefined && { maximumCents: (least ?? 0) + room }),
      })),
  },
);

export const feeTable: fc.Arbitrary<FeeTable> = fc
  .record({
    rounding: fc.constantFrom(...ROUNDING_MODES),
    edges: fc.uniqueArray(amount(2500, 900_000), { maxLength: 6 }),
    fees: fc.array(bandFee, { minLength: 7, maxLength: 7 }),
  })
  .map(({ rounding, edges, fees }) => {
    const starts = [0, ...edges.filter((edge) => edge > 0).sort((a, b) => a - b)];
    return feeTableSchema.parse({
      label: 'Buy fee',
      rounding,
      bands: starts.map((fromCents, i) => ({ fromCents, ...fees[i] })),
    });
  });

const increments: fc.Arbitrary<Increments> = fc
  .record({
    steps: fc.array(fc.constantFrom(1000, 2500, 5000, 7500, 10_000, 3333), { minLength: 3, maxLength: 3 }),
    edges: fc.uniqueArray(amount(5000, 900_000), { maxLength: 2 }),
  })
  .map(({ steps, edges }) =>
    incrementsSchema.parse(
      [0, ...edges.filter((edge) => edge > 0).sort((a, b) => a - b)].map((fromCents, i) => ({
        fromCents,
        stepCents: steps[i],
      })),
    ),
  );

const costKind = fc.constantFrom<CostLine['kind']>('recon', 'pack', 'overhead', 'transport', 'doubt', 'selling');
const cost = fc
  .record({ kind: costKind, amount: amount(0, 60_000) })
  .map(({ kind, amount: much }): CostLine => ({ kind, label: kind, cents: cents(much) }));

const factorUpTo = (most: number) => fc.integer({ min: 0, max: most * 1e6 }).map((n) => factor(n / 1e6));
const often = <T>(value: T, other: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 1, arbitrary: fc.constant(value) }, { weight: 2, arbitrary: other });

/** @param dearest highest retail, in cents; the naive oracle looks at every price below it */
export function dealArbitrary(dearest = 1_200_000): fc.Arbitrary<Deal> {
  return fc
    .record({
      retail: amount(0, dearest),
      titleKeeps: often(PPM, fc.integer({ min: 400_000, max: PPM })),
      costs: fc.array(cost, { maxLength: 5 }),
      fees: fc.array(feeTable, { minLength: 1, maxLength: 3 }),
      charges: fc.array(amount(0, 12_000), { maxLength: 2 }),
      kind: fc.constantFrom('floor' as const, 'cash' as const),
      advance: often(PPM, fc.integer({ min: 0, max: PPM })),
      advanceOnFees: fc.boolean(),
      advanceCap: fc.option(amount(0, 800_000), { nil: undefined }),
      floorFactor: factorUpTo(0.08),
      cashFactor: factorUpTo(0.08),
      flatHold: amount(0, 20_000),
      dollars: often(0, amount(0, 200_000)),
      shareOfRetail: often(0, fc.integer({ min: 0, max: 150_000 })),
      perCash: often(0, fc.integer({ min: 0, max: 200_000 })),
      chance: often(
        0,
        fc.oneof({ weight: 4, arbitrary: fc.integer({ min: 0, max: 120_000 }) }, fc.integer({ min: 0, max: PPM })),
      ),
      fixed: amount(0, 150_000),
      rate: often(0, fc.integer({ min: 0, max: 100_000 })),
      increments,
    })
    .map((d) => ({
      retail: cents(d.retail),
      titleKeeps: ppm(d.titleKeeps),
      costs: d.costs,
      fees: d.fees,
      charges: d.charges.map((much) => ({ label: 'Gate', cents: cents(much) })),
      funding: {
        kind: d.kind,
        advance: ppm(d.advance),
        advanceOnFees: d.advanceOnFees,
        ...(d.advanceCap !== undefined && { advanceCap: cents(d.advanceCap) }),
        floorFactor: d.floorFactor,
        cashFactor: d.cashFactor,
        flatHold: cents(d.flatHold),
      },
      rule: { dollars: cents(d.dollars), shareOfRetail: ppm(d.shareOfRetail), perCash: factor(d.perCash / 1e6) },
      unwind: { chance: ppm(d.chance), fixed: cents(d.fixed), rate: ppm(d.rate) },
      increments: d.increments,
    }));
}
