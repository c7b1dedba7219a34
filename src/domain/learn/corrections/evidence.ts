import { expectedPurchase } from '../../books/folder/expected.ts';
import { type Corrections, onlySome, switchedOnIn } from '../../correction/corrections.ts';
import { PPM } from '../../money/rate.ts';
import type { Comp } from '../../retail/comp.ts';
import type { Instant } from '../../time/instant.ts';
import { instant } from '../../time/instant.ts';
import { DAY } from '../../time/units.ts';
import type { Purchase } from './canceled-rate.ts';
import type { LotComps } from './comp-slopes.ts';
import type { Bought } from './days-learned.ts';
import type { ReconOutcome } from './recon-ratio.ts';
import type { RetailOutcome } from './retail-error.ts';
import type { WinCase } from './win-correction.ts';
import { type ContextOf, contextsWith, dealUnder, type TimedLot, winCase } from './win-outcomes.ts';

/** All that corrections are learned from, each case with when it became known. */
export interface CorrectionEvidence {
  readonly retail: readonly RetailOutcome[];
  readonly recon: readonly ReconOutcome[];
  readonly bought: readonly Bought[];
  readonly purchases: readonly Purchase[];
  readonly comps: readonly LotComps[];
  /** Wins beside what was expected with these other corrections on, so that nothing is taken off twice. */
  readonly wins: (on: Corrections) => readonly WinCase[];
}

/**
 * The evidence of past lots. Every forecast is worked out once more as it stood, but without corrections: else a
 * correction would be measured against itself, and vanish as soon as it is on. Stops after each lot, so that the caller
 * decides how long the page may be held.
 * @param open comparables of lots that have not ended
 * @param now ages of cars that still stand are counted up to it
 */
export function* gatherEvidence(
  lots: readonly TimedLot[],
  open: readonly LotComps[],
  now: Instant,
): Generator<number, CorrectionEvidence> {
  const plainOf = contextsWith({});
  // What was written down only after the sale is no forecast.
  const won = lots.filter(({ past }) => !past.forecast.late && past.happened.ended === 'won');
  const found = { retail: [] as RetailOutcome[], recon: [] as ReconOutcome[], plainWins: [] as WinCase[] };
  for (const [done, lot] of won.entries()) {
    yield done;
    found.retail.push(...retailOutcome(lot, plainOf));
    found.recon.push(...reconOutcomes(lot, plainOf));
    found.plainWins.push(...winCase(lot, plainOf, plainOf));
  }
  // A replay asks at each of a hundred weeks, mostly with nothing else on.
  const winsBefore = new Map<string, readonly WinCase[]>([['{}', found.plainWins]]);
  return {
    retail: found.retail,
    recon: found.recon,
    bought: won.flatMap((lot) => boughtCar(lot, now)),
    purchases: won.map(purchaseOf),
    comps: withoutRepeats([
      ...lots.map(({ past: { forecast } }) => ({ at: forecast.at, comps: forecast.facts.comps ?? [] })),
      ...open,
    ]),
    wins(on) {
      const others = onlySome(
        on,
        switchedOnIn(on).filter((id) => id !== 'win'),
      );
      const key = JSON.stringify(others);
      const cases = winsBefore.get(key) ?? won.flatMap((lot) => winCase(lot, plainOf, contextsWith(others)));
      winsBefore.set(key, cases);
      return cases;
    },
  };
}

/** The same in one go. */
export function evidenceOf(lots: readonly TimedLot[], open: readonly LotComps[], now: Instant): CorrectionEvidence {
  const work = gatherEvidence(lots, open, now);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

function purchaseOf({ known }: TimedLot): Purchase {
  const late = instant(known.ended + SETTLED_AFTER_DAYS * DAY);
  return {
    at: known.ended,
    settledAt: known.sold !== undefined && known.sold < late ? known.sold : late,
    ...(known.canceled !== undefined && { canceledAt: known.canceled }),
  };
}

/** By then a sale that stands is hardly ever canceled: an assumption; venues allow days to a few weeks for it. */
const SETTLED_AFTER_DAYS = 45;

/** A car that was wholesaled tells nothing of what a customer pays. */
function retailOutcome(lot: TimedLot, contextOf: ContextOf): readonly RetailOutcome[] {
  const { known, past } = lot;
  const sale = past.happened.bought?.sale;
  if (!sale || sale.buyer === 'wholesale' || known.sold === undefined || sale.cents <= 0) return [];
  const under = dealUnder(lot, contextOf);
  const sigma = under?.appraisal.retail?.sigma ?? 0;
  if (under === undefined || under.titled <= 0 || sigma <= 0) return [];
  return [{ at: known.sold, on: known.soldOn ?? known.sold, expected: under.titled, actual: sale.cents, sigma }];
}

/** Lines for which a bill came, beside what they were to cost if they were needed. */
function reconOutcomes({ past, known }: TimedLot, contextOf: ContextOf): readonly ReconOutcome[] {
  const { bought, hammer } = past.happened;
  const { billed } = known;
  if (bought === null || hammer === null || billed === undefined) return [];
  const { facts, context } = past.forecast;
  const expected = new Map(
    expectedPurchase(facts, contextOf(context), hammer).lines.map((line) => [line.key, line.cents]),
  );
  return bought.lines.flatMap(({ key, cost, label, actualCents }) => {
    const line = facts.recon?.[Number(key.split('-')[1])];
    const amount = (expected.get(key) ?? 0) / ((line?.chance ?? PPM) / PPM);
    if (cost !== 'recon' || actualCents === null || actualCents <= 0 || !(amount > 0)) return [];
    return [{ at: billed, on: past.happened.at, label: line?.label ?? label, expected: amount, actual: actualCents }];
  });
}

function boughtCar({ past, known }: TimedLot, now: Instant): readonly Bought[] {
  const { bought } = past.happened;
  if (bought === null) return [];
  const { sold, soldOn, canceled } = known;
  const isSold = bought.sold && sold !== undefined && soldOn !== undefined;
  const until = isSold ? soldOn : (canceled ?? now);
  const from = instant(Math.max(0, until - bought.days * DAY));
  return [
    {
      from,
      at: known.ended,
      ...(isSold && { sold: { on: soldOn, at: sold } }),
      ...(canceled !== undefined && { canceledAt: canceled }),
    },
  ];
}

/** What one comparable says counts once, at the first lot that it was typed for. */
function withoutRepeats(lots: readonly LotComps[]): readonly LotComps[] {
  const seen = new Set<string>();
  const isNew = ({ kind, price, miles, year, source }: Comp) => {
    const key = [kind, price, miles, year, source].join('|');
    return seen.has(key) ? false : seen.add(key) !== undefined;
  };
  return [...lots]
    .sort((a, b) => a.at - b.at)
    .flatMap(({ at, comps }) => {
      const fresh = comps.filter(isNew);
      return fresh.length < 2 ? [] : [{ at, comps: fresh }];
    });
}
