import type { Deal } from '../../src/domain/deal/deal.ts';
import { type FeeTable, feeTableSchema } from '../../src/domain/fees/fee-schedule.ts';
import { cents, ZERO } from '../../src/domain/money/cents.ts';
import { factor, PPM, ppm } from '../../src/domain/money/rate.ts';

/** Fee bands in whole dollars: `[from, flat]`, or `[from, flat, percent]`. All schedules here are invented. */
export function table(label: string, ...bands: readonly (readonly [number, number, number?])[]): FeeTable {
  return feeTableSchema.parse({
    label,
    bands: bands.map(([from, flat, percent = 0]) => ({
      fromCents: from * 100,
      flatCents: flat * 100,
      ratePpm: percent * 10_000,
    })),
  });
}

export const allCash = (cashFactor: number): Deal['funding'] => ({
  kind: 'cash',
  advance: ppm(0),
  advanceOnFees: false,
  floorFactor: factor(0),
  cashFactor: factor(cashFactor),
  flatHold: ZERO,
});

export const dollars = (amount: number) => cents(Math.round(amount * 100));

const STEPS_OF_25: Deal['increments'] = [{ fromCents: ZERO, stepCents: cents(2500) }];
const NEVER_UNDONE: Deal['unwind'] = { chance: ppm(0), fixed: ZERO, rate: ppm(0) };
const LEAST_1500: Deal['rule'] = { dollars: dollars(1500), shareOfRetail: ppm(0), perCash: factor(0) };

/** Three flat bands, all cash. Small enough to check by hand. */
export const flatBandsDeal: Deal = {
  retail: dollars(12_000),
  titleKeeps: ppm(PPM),
  costs: [
    { kind: 'recon', label: 'Recon', cents: dollars(1000) },
    { kind: 'transport', label: 'Transport', cents: dollars(200) },
  ],
  fees: [table('Buy fee', [0, 300], [5000, 400], [8000, 500])],
  charges: [],
  funding: allCash(0.02),
  rule: LEAST_1500,
  unwind: NEVER_UNDONE,
  increments: STEPS_OF_25,
};

/** A percent band that gives way to a cheaper flat one at $10,000, so that prices pay again above a hole. */
export const holeDeal = (retail: number): Deal => ({
  retail: dollars(retail),
  titleKeeps: ppm(800_000),
  costs: [
    { kind: 'recon', label: 'Recon', cents: dollars(1200) },
    { kind: 'transport', label: 'Transport', cents: dollars(350) },
    { kind: 'pack', label: 'Pack', cents: dollars(300) },
    { kind: 'selling', label: 'Cost of selling', cents: dollars(200) },
  ],
  fees: [
    table('Buy fee', [0, 100], [1000, 200], [5000, 0, 8], [10_000, 450], [15_000, 600]),
    table('Online fee', [0, 50], [5000, 99], [10_000, 129]),
  ],
  charges: [{ label: 'Gate', cents: dollars(79) }],
  funding: allCash(0.02),
  rule: LEAST_1500,
  unwind: NEVER_UNDONE,
  increments: STEPS_OF_25,
});
