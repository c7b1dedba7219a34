import { normalQuantile } from '../../statistics/normal.ts';
import { type Case, inCaseOrder, type Looking, type Scored, scored, weightedSum, weightOn } from './scored.ts';
import { type Share, wilson } from './wilson.ts';

/** A bid that was placed, with the chance to win that was given to it, and whether it won. */
export interface ChanceCase extends Case {
  /** 0 to 1. */
  readonly chance: number;
  readonly won: boolean;
}

/** Bids that were given about the same chance. */
export interface ReliabilityBin {
  readonly cases: number;
  /** The average chance that was given. */
  readonly said: number;
  /** The share that won. */
  readonly won: Share;
}

export interface ChanceScore {
  /** Average squared distance between the chance and what happened (Brier 1950): 0 is perfect, 0.25 is a coin. */
  readonly brier: number;
  /** The same for always saying the share that won, which knows nothing of the single lot. */
  readonly baseRate: { readonly chance: number; readonly brier: number };
  /** By how much of the plain share's score the chances do better: 1 is perfect, below 0 is worse; null where that is 0. */
  readonly skill: number | null;
  /** From the least to the most likely, at most five, with as many bids in each as can be. */
  readonly bins: readonly ReliabilityBin[];
  /** Wins that the chances add up to, and wins there were, each with what it counts for. */
  readonly expectedWins: number;
  readonly wins: number;
  /** More or fewer wins than luck makes in 99 of 100 such logs; null where it may be luck. */
  readonly tilt: 'more' | 'fewer' | null;
}

/** Below so many bids a reliability picture is mostly luck. */
export const LEAST_BIDS = 30;
const MOST_BINS = 5;
const CLEARLY = normalQuantile(0.995);

/** How good the chances to win were. */
export function chanceScore(cases: readonly ChanceCase[], looking: Looking): Scored<ChanceScore> {
  return scored(inCaseOrder(cases), LEAST_BIDS, (own) => scoreOf(own, weightOn(looking)));
}

function scoreOf(cases: readonly ChanceCase[], weightOf: (one: ChanceCase) => number): ChanceScore {
  const sum = (of: (one: ChanceCase) => number) => weightedSum(cases, weightOf, of);
  const total = sum(() => 1);
  const wins = sum(({ won }) => (won ? 1 : 0));
  const expectedWins = sum(({ chance }) => chance);
  const rate = wins / total;
  // Weights count squared in a variance, so that many old bids are not taken for few new ones.
  const variance = cases.reduce((so, one) => so + weightOf(one) ** 2 * one.chance * (1 - one.chance), 0);
  const off = wins - expectedWins;
  const clear = Math.abs(off) > CLEARLY * Math.sqrt(variance);
  const brier = sum(({ chance, won }) => (chance - (won ? 1 : 0)) ** 2) / total;
  const plain = rate * (1 - rate);
  return {
    brier,
    baseRate: { chance: rate, brier: plain },
    skill: plain > 0 ? 1 - brier / plain : null,
    bins: binsOf(cases, weightOf),
    expectedWins,
    wins,
    tilt: !clear ? null : off > 0 ? 'more' : 'fewer',
  };
}

/** As many bids in each as can be; bids that were given the same chance stay together. */
function binsOf(cases: readonly ChanceCase[], weightOf: (one: ChanceCase) => number): ReliabilityBin[] {
  const byChance = cases.toSorted((a, b) => a.chance - b.chance);
  const bins = new Map<number, ChanceCase[]>();
  const binOfChance = new Map<number, number>();
  byChance.forEach((one, i) => {
    // All of a chance go where the first of them goes.
    const bin = binOfChance.get(one.chance) ?? Math.floor((i * MOST_BINS) / byChance.length);
    binOfChance.set(one.chance, bin);
    bins.set(bin, [...(bins.get(bin) ?? []), one]);
  });
  return [...bins.values()].map((own) => {
    const total = weightedSum(own, weightOf, () => 1);
    return {
      cases: own.length,
      said: weightedSum(own, weightOf, ({ chance }) => chance) / total,
      won: wilson(
        weightedSum(own, weightOf, ({ won }) => (won ? 1 : 0)),
        total,
      ),
    };
  });
}
