import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { comp, SETUP, van } from './lot-for-tests.ts';

/** `RUNS=1000` and so on for a longer look. */
const RUNS = Number(process.env.RUNS ?? 40);

const dollars = (min: number, max: number) => fc.integer({ min, max }).map((amount) => amount * 100);
const reconLine = fc
  .tuple(dollars(0, 900), dollars(0, 900), dollars(0, 3000), fc.boolean(), fc.constantFrom(1_000_000, 600_000, 150_000))
  .map(([low, more, most, bare, chance]): { label: string; amount: Amount; chance: number } => ({
    label: 'Work',
    amount: bare ? { likely: low + more } : { low, likely: low + more, high: low + more + most },
    chance,
  }));
const claim = fc
  .record({ worth: dollars(1, 9000), evidence: fc.constantFrom('stated', 'vin-agrees', 'seen') })
  .map(({ worth, evidence }) => ({ about: 'other', statement: 'One owner', worthIfFalse: worth, evidence }));

/** A lot, often with a substitute whose price lies where the deal just breaks even. */
const lots = fc
  .record({
    likely: dollars(3000, 40_000),
    spread: fc.double({ min: 0.01, max: 0.25, noNaN: true }),
    comps: fc.array(fc.double({ min: 0.85, max: 1.15, noNaN: true }), { maxLength: 3 }),
    recon: fc.array(reconLine, { maxLength: 3 }),
    claims: fc.array(claim, { maxLength: 3 }),
    ceiling: fc.option(fc.double({ min: 0.7, max: 1.1, noNaN: true }), { nil: undefined, freq: 4 }),
    cap: fc.constantFrom(50_000, 150_000, 250_000, 400_000),
    least: dollars(0, 2500),
    days: fc.constantFrom({ kind: 'median', days: 35 }, { kind: 'fixed', days: 30 }, { kind: 'fixed', days: 0 }),
    fee: dollars(1, 600),
  })
  .map(({ likely, spread, comps, recon, claims, ceiling, cap, least, days, fee }) => ({
    lot: {
      retail: { low: Math.round(likely * (1 - spread)), likely, high: Math.round(likely * (1 + spread)) },
      comps: comps.map((share) => comp(Math.round(likely * share))),
      recon,
      claims,
      ceilings: ceiling === undefined ? [] : [{ kind: 'new', label: 'New', list: Math.round(likely * ceiling) }],
    },
    setup: setupSectionsSchema.parse({
      ...SETUP,
      rules: { dollarsCents: least, lossChancePpm: cap },
      carrying: { ...SETUP.carrying, daysToSell: days },
      feeSchedules: [
        {
          ...SETUP.feeSchedules[0],
          editions: [{ tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: fee }] }] }],
        },
      ],
    }),
  }));
type Made = typeof lots extends fc.Arbitrary<infer T> ? T : never;

function maxBidOf(facts: LotFacts, setup: Setup): number {
  const standing = standingOf(facts, pricingContext(setup));
  if (!standing.ok) throw new Error(standing.message);
  return standing.value.maxBid ?? -1;
}

function neverHigher<More>(more: fc.Arbitrary<More>, dearer: (made: Made, more: More) => Made): void {
  fc.assert(
    fc.property(lots, more, (made, amount) => {
      const after = dearer(made, amount);
      expect(maxBidOf(van(after.lot), after.setup)).toBeLessThanOrEqual(maxBidOf(van(made.lot), made.setup));
    }),
    { numRuns: RUNS },
  );
}

describe('under a cap on the chance of a loss, and under a ceiling, the max bid never rises', () => {
  test('with one more doubtful statement', () => {
    neverHigher(claim, ({ lot, setup }, one) => ({ lot: { ...lot, claims: [...lot.claims, one] }, setup }));
  });

  test('with one more recon line', () => {
    neverHigher(reconLine, ({ lot, setup }, one) => ({ lot: { ...lot, recon: [...lot.recon, one] }, setup }));
  });

  test('with a dearer recon line', () => {
    neverHigher(dollars(1, 500), ({ lot, setup }, more) => ({
      lot: {
        ...lot,
        recon: lot.recon.map((line, i) => (i > 0 ? line : { ...line, amount: raised(line.amount, more) })),
      },
      setup,
    }));
  });

  test('with dearer transport, pack, fees or days', () => {
    neverHigher(dollars(1, 500), ({ lot, setup }, more) => ({
      lot: { ...lot, transport: 650_00 + more },
      setup,
    }));
    neverHigher(dollars(1, 500), ({ lot, setup }, more) => ({
      lot,
      setup: setupSectionsSchema.parse({
        ...setup,
        costs: { ...setup.costs, packCents: setup.costs.packCents + more },
      }),
    }));
  });

  test('with a lower ceiling', () => {
    neverHigher(dollars(1, 2000), ({ lot, setup }, less) => ({
      lot: { ...lot, ceilings: lot.ceilings.map((one) => ({ ...one, list: Math.max(100, one.list - less) })) },
      setup,
    }));
  });
});

interface Amount {
  readonly low?: number | undefined;
  readonly likely: number;
  readonly high?: number | undefined;
}

const raised = ({ low, likely, high }: Amount, more: number): Amount => ({
  likely: likely + more,
  ...(low !== undefined && high !== undefined && { low: low + more, high: high + more }),
});
