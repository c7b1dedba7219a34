import { groupBy } from '../../group-by.ts';
import { plainWords } from '../../text/plain-words.ts';
import type { Instant } from '../../time/instant.ts';
import { type Known, weighted } from './forgetting.ts';
import type { Learned } from './learned.ts';
import { type RatioBelief, ratioLearned } from './log-ratio.ts';

/** One recon line with what was billed against it, both above 0 and of the same kind. */
export interface ReconOutcome extends Known {
  readonly label: string;
  readonly expected: number;
  readonly actual: number;
}

/** What the lines of one wording came to. */
export interface ReconLearned extends Learned {
  /** As it was worded first; capitals, spaces and signs don't tell lines apart. */
  readonly label: string;
}

/** An assumption of this tool: single jobs end a quarter from the estimate, and "right on average" counts for five. */
export const RECON_BELIEF: RatioBelief = { spread: 0.25, cases: 5, freedom: 6 };

/** How many times the estimate each recon line costs, the line with the most cases first. */
export function reconRatios(
  outcomes: readonly ReconOutcome[],
  now: Instant,
  halfLifeDays?: number,
): readonly ReconLearned[] {
  const lines = groupBy(weighted(outcomes, now, halfLifeDays), ({ one }) => plainWords(one.label));
  return [...lines.values()]
    .map((cases) => {
      const ratios = cases.map(({ one, weight }) => ({ log: Math.log(one.actual / one.expected), weight }));
      const earliest = cases.reduce((first, other) => (isBefore(other.one, first.one) ? other : first));
      return { label: earliest.one.label, ...ratioLearned(ratios, RECON_BELIEF, lines.size) };
    })
    .sort((a, b) => b.cases - a.cases || (a.label < b.label ? -1 : 1));
}

/** By the time, then by the wording, so that the order in which cases are listed changes nothing. */
const isBefore = (one: ReconOutcome, other: ReconOutcome): boolean =>
  one.at !== other.at ? one.at < other.at : one.label < other.label;
