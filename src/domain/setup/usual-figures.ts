import type { Usual } from './unlikely.ts';

const dollars = (least: number, most: number, none?: true): Usual => ({
  least: Math.round(least * 100),
  most: most * 100,
  ...(none && { none }),
});
const percents = (least: number, most: number, none?: true): Usual => ({
  least: Math.round(least * 10_000),
  most: most * 10_000,
  ...(none && { none }),
});

/**
 * What a dealer could mean by each figure of a setup, with room on both sides (common practice, no source). Wide enough that
 * nobody is asked about a figure of his own; narrow enough that cents for dollars and percent for parts per million fall
 * outside.
 */
export const USUAL = {
  rules: {
    dollarsCents: dollars(50, 20_000, true),
    shareOfRetailPpm: percents(0.2, 60, true),
    perCashDayPpm: percents(0.005, 3, true),
    lossChancePpm: percents(0.5, 100),
  },
  costs: {
    packCents: dollars(10, 5000, true),
    overheadCents: dollars(10, 5000, true),
    sellingCents: dollars(10, 5000, true),
    reconCents: dollars(20, 20_000, true),
  },
  undone: {
    chancePpm: percents(0.05, 40, true),
    lostCents: dollars(5, 10_000, true),
    lostRatePpm: percents(0.02, 25, true),
  },
  carrying: {
    cashAnnualRatePpm: percents(0.5, 60, true),
    lotCentsPerDay: dollars(0.1, 100, true),
    horizonDays: { least: 14, most: 730 },
  },
  floorPlan: {
    annualRatePpm: percents(0.5, 40, true),
    advancePpm: percents(20, 100),
    advanceCapCents: dollars(2000, 1_000_000),
    unitFeeCents: dollars(3, 1000, true),
    sharePpm: percents(0.5, 100),
  },
  estimation: {
    milesSlopePpm: percents(0.5, 20),
    milesSlopeDoubtPpm: percents(0, 15),
    yearSlopePpm: percents(1, 40),
    yearSlopeDoubtPpm: percents(0, 20),
    carSpreadPpm: percents(1, 35),
    guessSpreadPpm: percents(2, 50),
    askingRatioPpm: percents(75, 115),
    askingRatioDoubtPpm: percents(0, 20),
    twinStretchPpm: percents(0, 100),
  },
  title: { keepsPpm: percents(5, 100) },
  daysToSell: { least: 3, most: 365 },
  transport: {
    cents: dollars(20, 10_000, true),
    centsPerMile: dollars(0.1, 15, true),
    minimumCents: dollars(20, 5000, true),
  },
  step: dollars(1, 2500),
  lastStepFrom: { least: 50_000, most: Number.POSITIVE_INFINITY, none: true },
} as const;
