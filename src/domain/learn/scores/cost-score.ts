import { groupBy } from '../../group-by.ts';
import { type Cents, cents } from '../../money/cents.ts';
import { plainWords } from '../../text/plain-words.ts';
import { instant } from '../../time/instant.ts';
import { type ReconLearned, reconRatios } from '../corrections/recon-ratio.ts';
import { type Case, inCaseOrder, type Looking, type Scored, scored } from './scored.ts';

/** An amount that was forecast, and what was billed for it. */
export interface CostCase extends Case {
  /** The line's own wording; for fees the venue. */
  readonly label: string;
  readonly expected: Cents;
  readonly actual: Cents;
}

/** One recon line over all cars that had it. */
export interface ReconScore {
  readonly expected: Cents;
  readonly actual: Cents;
  /** How many times the estimate it costs, with what is believed before any case, and its range. */
  readonly ratio: ReconLearned;
}

/** Fewer bills for a line than this say more about the single car. */
export const LEAST_BILLS = 5;

/** Each recon line with its bills against its estimates, the one with the most bills first. */
export function reconScores(
  cases: readonly CostCase[],
  { today, halfLifeDays }: Looking,
): readonly (Scored<ReconScore> & { readonly label: string })[] {
  const usable = inCaseOrder(cases.filter(({ expected, actual }) => expected > 0 && actual > 0));
  const now = instant(Date.parse(`${today}T12:00Z`));
  return [...groupBy(usable, ({ label }) => plainWords(label)).values()]
    .map((own) => {
      const outcomes = own.map(({ date, label, expected, actual }) => ({
        at: instant(Date.parse(`${date < today ? date : today}T12:00Z`)),
        label,
        expected,
        actual,
      }));
      const [ratio] = reconRatios(outcomes, now, halfLifeDays);
      const score = scored(own, LEAST_BILLS, () => ({ ...sums(own), ratio: ratio as ReconLearned }));
      return { ...score, label: own[0]?.label ?? '' };
    })
    .sort((a, b) => b.cases - a.cases || (a.label < b.label ? -1 : 1));
}

/** Fees as the sales billed them. */
export interface FeeScore {
  readonly expected: Cents;
  readonly actual: Cents;
  /** How many cars were billed to the cent what the schedule said. */
  readonly same: number;
  /** The venues that billed otherwise, the largest difference first. */
  readonly venues: readonly { readonly venue: string; readonly cars: number; readonly over: Cents }[];
}

/** Fees are no estimate: every difference is either a wrong bill or a schedule that was copied wrong, so one car is enough. */
export function feeScore(cases: readonly CostCase[]): Scored<FeeScore> {
  return scored(inCaseOrder(cases), 1, (own) => {
    const off = own.filter(({ expected, actual }) => expected !== actual);
    const venues = [...groupBy(off, ({ label }) => label)].map(([venue, cars]) => {
      const { expected, actual } = sums(cars);
      return { venue, cars: cars.length, over: cents(actual - expected) };
    });
    return {
      ...sums(own),
      same: own.length - off.length,
      venues: venues.sort((a, b) => Math.abs(b.over) - Math.abs(a.over) || (a.venue < b.venue ? -1 : 1)),
    };
  });
}

function sums(cases: readonly CostCase[]): { readonly expected: Cents; readonly actual: Cents } {
  const total = (of: (one: CostCase) => Cents) => cents(cases.reduce((sum, one) => sum + of(one), 0));
  return { expected: total(({ expected }) => expected), actual: total(({ actual }) => actual) };
}
