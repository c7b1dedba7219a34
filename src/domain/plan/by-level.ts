import { type Gain, gainsAt, type Standpoint } from './bid-at.ts';
import type { PlanBatch, PlanMeans } from './worked-plan.ts';

/** The batches with the chances of one level of the weekend. */
export interface AtLevel {
  /** How likely the level is. */
  readonly weight: number;
  /** The same as bids are weighed by: see {@link cautiousWeights}. */
  readonly cautious: number;
  readonly batches: readonly PlanBatch[];
}

/** The batches at each level that they have chances for; one that is certain where there are none. */
export function atLevels(batches: readonly PlanBatch[], { levels }: PlanMeans): readonly AtLevel[] {
  if (levels === undefined) return [{ weight: 1, cautious: 1, batches }];
  const cautious = cautiousWeights(levels);
  return levels.map((weight, level) => ({
    weight,
    cautious: cautious[level] ?? weight,
    batches: batches.map(({ at, lots }) => ({
      at,
      lots: lots.map((lot) => ({
        ...lot,
        points: { ...lot.points, chance: lot.byLevel?.[level] ?? lot.points.chance },
      })),
    })),
  }));
}

/** What of a batch is seen at each level. */
export interface SeenBatch {
  /** Of a lot on its own: what each price gains at each level, and how likely level and price are together. */
  readonly gains: readonly { readonly of: readonly Gain[]; readonly chance: Float64Array; readonly weight: number }[];
  /** Of lots that close together: the values after them, averaged over the levels. */
  readonly next: Float64Array;
}

/** Adds one level. */
export function seeBatch(
  before: SeenBatch | undefined,
  { lots }: PlanBatch,
  weight: number,
  from: Standpoint,
): SeenBatch {
  const [only] = lots;
  if (only !== undefined && lots.length === 1) {
    const gains = { of: gainsAt(only.points, from), chance: only.points.chance, weight };
    return { gains: [...(before?.gains ?? []), gains], next: EMPTY };
  }
  const next = before?.next ?? new Float64Array(from.next.length);
  for (let at = 0; at < next.length; at++) next[at] = (next[at] as number) + weight * (from.next[at] as number);
  return { gains: [], next };
}

const EMPTY = new Float64Array(0);

/** What each price gains, averaged over the levels as likely as they are if that price is paid. */
export function mixedGains(levels: SeenBatch['gains']): readonly Gain[] {
  const [first] = levels;
  if (first === undefined || levels.length === 1) return first?.of ?? [];
  return first.of.map((one, j) => {
    if (one.short !== undefined) return one;
    // Even an impossible price has a worth: that of the levels as they are.
    const share = ({ chance, weight }: (typeof levels)[number]) => weight * ((chance[j] as number) + 1e-12);
    const all = levels.reduce((sum, level) => sum + share(level), 0);
    const mean = (of: (gain: Gain) => number) =>
      levels.reduce((sum, level) => sum + share(level) * of(level.of[j] ?? one), 0) / all;
    return { gain: mean(({ gain }) => gain), worth: mean(({ worth }) => worth), tied: mean(({ tied }) => tied) };
  });
}

/** Standard deviations by which bids take prices to run higher than expected: see the README for what it costs and saves. */
const CAUTION = 0.3;

/**
 * The levels' weights with their mean moved up by {@link CAUTION} of their standard deviations, for levels evenly apart in rising
 * order: each weight times e^(caution × its distance from the mean in standard deviations), which moves a normal's mean and leaves
 * its spread.
 */
export function cautiousWeights(weights: readonly number[]): readonly number[] {
  const mean = weights.reduce((sum, weight, i) => sum + weight * i, 0);
  const sd = Math.sqrt(weights.reduce((sum, weight, i) => sum + weight * (i - mean) ** 2, 0));
  if (!(sd > 0)) return weights;
  const tilted = weights.map((weight, i) => weight * Math.exp((CAUTION * (i - mean)) / sd));
  const all = tilted.reduce((a, b) => a + b, 0);
  return tilted.map((weight) => weight / all);
}
