import { groupBy } from '../../group-by.ts';
import { type Cents, cents, roundedCents } from '../../money/cents.ts';
import { tQuantile } from '../../statistics/student-t.ts';
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
  /**
   * How many times the estimate it costs, with what is believed before any case, and its range; null where no bill has an
   * estimate to be held against. Work that was not needed after all, or that nobody expected, is in the sums alone.
   */
  readonly ratio: ReconLearned | null;
}

/** Fewer bills for a line than this say more about the single car. */
export const LEAST_BILLS = 5;

/** Each recon line with its bills against its estimates, the one with the most bills first. */
export function reconScores(
  cases: readonly CostCase[],
  { today, halfLifeDays }: Looking,
): readonly (Scored<ReconScore> & { readonly label: string })[] {
  const now = instant(Date.parse(`${today}T12:00Z`));
  return [...groupBy(inCaseOrder(cases), ({ label }) => plainWords(label)).values()]
    .map((own) => {
      const ratios = own.filter(({ expected, actual }) => expected > 0 && actual > 0);
      const outcomes = ratios.map(({ date, label, expected, actual }) => ({
        at: instant(Date.parse(`${date < today ? date : today}T12:00Z`)),
        label,
        expected,
        actual,
      }));
      const [ratio] = reconRatios(outcomes, now, halfLifeDays);
      const score = scored(own, LEAST_BILLS, () => ({ ...sums(own), ratio: ratio ?? null }));
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
  /** Each venue, the one with the largest difference first. */
  readonly venues: readonly VenueFees[];
}

/** What one venue billed. */
export interface VenueFees {
  readonly venue: string;
  readonly cars: number;
  /** Cars that were billed otherwise than the schedule said. */
  readonly off: number;
  /** All of them together; below zero where it billed less. */
  readonly over: Cents;
  /** A car, on average, and a range that holds the true average in 19 of 20 cases (Student's t); no range for one car. */
  readonly mean: Cents;
  readonly range: { readonly low: Cents; readonly high: Cents } | null;
}

/** Fees are no estimate: every difference is either a wrong bill or a schedule that was copied wrong, so one car is enough. */
export function feeScore(cases: readonly CostCase[]): Scored<FeeScore> {
  return scored(inCaseOrder(cases), 1, (own) => {
    const venues = [...groupBy(own, ({ label }) => label)].map(([venue, cars]) => venueFees(venue, cars));
    return {
      ...sums(own),
      same: own.filter(isSame).length,
      venues: venues.sort((a, b) => Math.abs(b.over) - Math.abs(a.over) || (a.venue < b.venue ? -1 : 1)),
    };
  });
}

const isSame = ({ expected, actual }: CostCase): boolean => expected === actual;

function venueFees(venue: string, cars: readonly CostCase[]): VenueFees {
  const { expected, actual } = sums(cars);
  const over = cents(actual - expected);
  const mean = over / cars.length;
  const squares = cars.reduce((sum, one) => sum + (one.actual - one.expected - mean) ** 2, 0);
  const freedom = cars.length - 1;
  const reach = freedom === 0 ? 0 : tQuantile(0.975, freedom) * Math.sqrt(squares / freedom / cars.length);
  return {
    venue,
    cars: cars.length,
    off: cars.length - cars.filter(isSame).length,
    over,
    mean: roundedCents(mean),
    range: freedom === 0 ? null : { low: roundedCents(mean - reach), high: roundedCents(mean + reach) },
  };
}

function sums(cases: readonly CostCase[]): { readonly expected: Cents; readonly actual: Cents } {
  const total = (of: (one: CostCase) => Cents) => cents(cases.reduce((sum, one) => sum + of(one), 0));
  return { expected: total(({ expected }) => expected), actual: total(({ actual }) => actual) };
}
