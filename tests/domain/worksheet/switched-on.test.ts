import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectedPurchase } from '../../../src/domain/books/folder/expected.ts';
import {
  CORRECTION_IDS,
  type CorrectionId,
  type Corrections,
  correctionsSchema,
} from '../../../src/domain/correction/corrections.ts';
import { saySwitches, switched } from '../../../src/domain/correction/switches.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { correctedSetup } from '../../../src/domain/worksheet/corrected-setup.ts';
import { daysWhatIf } from '../../../src/domain/worksheet/days-what-if.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { comp, SETUP, sheetOf, van } from '../appraisal/lot-for-tests.ts';

const on = { since: 0, cases: 12 };
/** One of each, all against the dealer. */
const ALL: Corrections = correctionsSchema.parse({
  slopes: { milesSlopePpm: 60_000, milesSlopeDoubtPpm: 9_000, yearSlopePpm: 130_000, yearSlopeDoubtPpm: 20_000, ...on },
  asking: { ratioPpm: 950_000, doubtPpm: 10_000, ...on },
  retailLevel: { factorPpm: 980_000, ...on },
  retailSpread: { factorPpm: 1_300_000, ...on },
  recon: { lines: [{ line: 'Tires', factorPpm: 1_200_000 }], ...on },
  days: { medianDays: 63.5, countsFor: 22, ...on },
  canceled: { chancePpm: 60_000, ...on },
  win: { haircutPpm: 29_000, ...on },
});
const withOnly = (...ids: readonly CorrectionId[]): Setup => ({
  ...SETUP,
  corrections: Object.fromEntries(ids.map((id) => [id, ALL[id]])),
});
const LOT = van({
  recon: [{ label: 'Tires', amount: { likely: 900_00 } }],
  comps: [comp(19_500_00, { miles: 45_000, year: 2021 }), comp(17_900_00, { kind: 'asking', miles: 70_000 })],
});
const bid = (setup: Setup) => sheetOf(LOT, setup).result.maxBid ?? -1;

describe('a correction that is switched on', () => {
  test.each(['slopes', 'asking', 'retailLevel', 'recon', 'days', 'canceled', 'win'] as const)(
    '%s moves the max bid by about its own line of the walk, and the list shows the same number',
    (id) => {
      const setup = withOnly(id);
      const sheet = sheetOf(LOT, setup);
      const line = walkOf(sheet).steps.find(({ key }) => key === `correction-${id}`);
      expect(line?.cents).not.toBe(0);
      // Within two steps of the sale: what is left by rounding down is another at either price.
      expect(Math.abs(bid(SETUP) - bid(setup) - (line?.cents ?? 0))).toBeLessThanOrEqual(2 * 25_00 + 400);
      const standing = standingOf(LOT, pricingContext(setup));
      expect(standing.ok && standing.value.maxBid).toBe(sheet.result.maxBid);
    },
  );

  test('of the spread leaves the profit rule alone, and tells in the chance of a loss', () => {
    const careful = (setup: Setup) => ({ ...setup, rules: { ...setup.rules, lossChancePpm: 100_000 as never } });
    expect(sheetOf(LOT, withOnly('retailSpread')).result.breakdown.retail.cents).toBe(
      sheetOf(LOT).result.breakdown.retail.cents,
    );
    expect(bid(careful(withOnly('retailSpread')))).toBeLessThan(bid(careful(SETUP)));
  });

  test('takes off what a pocket calculator does: 2% of retail, a fifth more for tires', () => {
    const plain = sheetOf(LOT).deal;
    expect(sheetOf(LOT, withOnly('retailLevel')).deal.retail).toBe(Math.round(plain.retail * 0.98));
    const recon = sheetOf(LOT, withOnly('recon')).deal.costs.find(({ kind }) => kind === 'recon');
    expect(recon?.cents).toBe(1_080_00);
  });

  test('reaches what a folder expects of the bills', () => {
    const expected = expectedPurchase(LOT, pricingContext(withOnly('recon')), cents(9_000_00));
    expect(expected.lines.find(({ key }) => key === 'recon-0')?.cents).toBe(1_080_00);
  });

  test('of days is the same when the days are asked about, and twice corrected is corrected once', () => {
    const setup = withOnly('days');
    const half = daysWhatIf(LOT, pricingContext(setup))?.half ?? 0;
    expect(half).toBeGreaterThan(bid(setup));
    const once = correctedSetup({ ...SETUP, corrections: ALL });
    expect(correctedSetup(once)).toEqual(once);
  });
});

describe('the walk with corrections', () => {
  test('still sums to the cent, whichever are on and whatever they say', () => {
    fc.assert(
      fc.property(
        fc.subarray([...CORRECTION_IDS]),
        fc.integer({ min: 500_000, max: 1_500_000 }),
        fc.integer({ min: -100_000, max: 200_000 }),
        fc.constantFrom(0, 16_000_00, 19_000_00),
        (ids, factorPpm, haircutPpm, list) => {
          const corrections = {
            ...withOnly(...ids).corrections,
            ...(ids.includes('retailLevel') && { retailLevel: { factorPpm, ...on } }),
            ...(ids.includes('win') && { win: { haircutPpm, ...on } }),
          };
          const ceilings = list === 0 ? [] : [{ kind: 'new', label: 'New', list }];
          const sheet = sheetOf(
            { ...LOT, ...van({ ceilings, comps: LOT.comps, recon: LOT.recon }) },
            {
              ...SETUP,
              corrections: correctionsSchema.parse(corrections),
            },
          );
          const { from, steps, to } = walkOf(sheet);
          expect(steps.reduce((left, step) => left - step.cents, from.cents as number)).toBe(to);
          expect(to).toBe(sheet.result.maxBid ?? 0);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('begins with the estimate as it was entered and names each correction', () => {
    const { from, steps } = walkOf(sheetOf(LOT, { ...SETUP, corrections: ALL }));
    expect(from.cents).toBe(walkOf(sheetOf(LOT)).from.cents);
    expect(from.label).toBe('Retail before corrections');
    expect(walkOf(sheetOf(LOT, withOnly('recon'))).from.label).toBe('Expected retail');
    expect(steps.filter(({ key }) => key.startsWith('correction-')).map(({ label }) => label)).toEqual([
      'Correction: miles and age',
      'Correction: asking prices',
      'Correction: retail',
      'Correction: recon',
      'Correction: days to sell',
      'Correction: canceled sales',
      'Correction: cars that you win',
    ]);
  });

  test('has no line while nothing is on', () => {
    expect(sheetOf(LOT).uncorrected).toBeUndefined();
    expect(sheetOf(LOT, { ...SETUP, corrections: {} }).uncorrected).toBeUndefined();
  });
});

describe('switches', () => {
  test('change only what they name; null switches off', () => {
    const after = switched(ALL, { recon: null, halfLifeDays: 90 });
    expect(after.recon).toBeUndefined();
    expect(after.win).toEqual(ALL.win);
    expect(after.halfLifeDays).toBe(90);
    expect(switched(after, { halfLifeDays: null }).halfLifeDays).toBeUndefined();
    expect(saySwitches({ recon: null, win: ALL.win })).toBe(
      'Correction: recon switched off. Correction: cars that you win switched on.',
    );
  });
});
