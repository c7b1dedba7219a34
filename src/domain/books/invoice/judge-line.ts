import type { CostKind } from '../../accounts/cost-kind.ts';
import type { LotId } from '../../lot/lot.ts';
import { type Cents, cents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import { plainWords } from '../../text/plain-words.ts';
import { daysBetween } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { answeredBy } from '../folder/compare-lines.ts';
import { differenceInWords } from '../folder/difference-words.ts';
import type { ExpectedLine } from '../folder/expected.ts';
import type { InvoiceLine } from './invoice-line.ts';

/** What was booked for a car before, as far as a new line is compared with it. */
export interface BookedBefore {
  readonly label: string;
  readonly cost: CostKind;
  readonly cents: Cents;
  readonly date: LocalDate;
  readonly against?: string | undefined;
  readonly number?: string | undefined;
}

export interface BookedCar {
  readonly lot: LotId;
  readonly expected: readonly ExpectedLine[];
  readonly costs: readonly BookedBefore[];
  readonly payments: readonly {
    readonly cents: Cents;
    readonly date: LocalDate;
    readonly number?: string | undefined;
    /** It was noted after the sale, so a statement may have it some days off. */
    readonly noted?: boolean | undefined;
  }[];
  /** What is owed before anything of this invoice is booked. */
  readonly owed: Cents;
}

/**
 * - `as-expected`: to the cent;
 * - `differs`: from the fee schedule, the result or the worksheet;
 * - `not-expected`: nobody foresaw it;
 * - `booked`: the very same is booked already;
 * - `again`: the same thing is booked already with another amount;
 * - `twice`: it stands in this file twice;
 * - `payment`, `part-payment`, `overpaid`: money, and what it leaves.
 */
export type Verdict =
  | 'as-expected'
  | 'differs'
  | 'not-expected'
  | 'booked'
  | 'again'
  | 'twice'
  | 'payment'
  | 'part-payment'
  | 'overpaid';

export interface JudgedLine {
  readonly line: InvoiceLine;
  readonly verdict: Verdict;
  readonly expected: ExpectedLine | null;
  readonly why: string;
}

/** Holds the lines that were matched to one car against what was expected and what is booked, in the order of the file. */
export function judgeLines(lines: readonly InvoiceLine[], car: BookedCar): JudgedLine[] {
  const seen: InvoiceLine[] = [];
  let owed: number = car.owed;
  return lines.map((given) => {
    const line = withKind(given, car.expected);
    const twice = seen.find((other) => isSameLine(other, line));
    seen.push(line);
    if (twice !== undefined)
      return { line, verdict: 'twice', expected: null, why: `Same as row ${twice.row} of this file.` };
    const judged = line.what === 'payment' ? judgePayment(line, car, owed) : judgeCost(line, car);
    if (judged.verdict !== 'booked') owed += line.what === 'payment' ? -line.cents : line.cents;
    return judged;
  });
}

/** "Other" becomes a fee if the fee schedule has a fee of that name. */
function withKind(line: InvoiceLine, expected: readonly ExpectedLine[]): InvoiceLine {
  if (line.what !== 'cost' || line.cost !== 'other') return line;
  const fee = answeredBy({ cost: 'fee', label: line.label }, expected);
  return fee === undefined ? line : { ...line, cost: 'fee' };
}

function judgeCost(line: InvoiceLine, car: BookedCar): JudgedLine {
  const key = answeredBy(line, car.expected);
  const expected = car.expected.find((each) => each.key === key) ?? null;
  const before = car.costs.filter((cost) =>
    key === undefined
      ? cost.cost === line.cost && plainWords(cost.label) === plainWords(line.label)
      : answeredBy(cost, car.expected) === key,
  );
  const same = before.find((cost) => cost.cents === line.cents);
  if (same !== undefined) {
    const paper = same.number === undefined ? '' : `, number ${same.number}`;
    return {
      line,
      verdict: 'booked',
      expected,
      why: `Already recorded: ${formatMoney(same.cents)} on ${same.date}${paper}.`,
    };
  }
  const [other] = before;
  if (other !== undefined && line.cents > 0) {
    const why = `${other.label} is already recorded at ${formatMoney(other.cents)}. Recording this too would count both. Undo the earlier one if this corrects it.`;
    return { line, verdict: 'again', expected, why };
  }
  if (expected === null && line.cents < 0)
    return { line, verdict: 'not-expected', expected, why: 'A credit: this much comes off the car’s cost.' };
  const why = differenceInWords(line.cost, expected, line.cents);
  if (expected === null) return { line, verdict: 'not-expected', expected, why };
  return { line, verdict: line.cents === expected.cents ? 'as-expected' : 'differs', expected, why };
}

function judgePayment(line: InvoiceLine, car: BookedCar, owed: number): JudgedLine {
  const same = car.payments.find(
    (payment) =>
      payment.cents === line.cents &&
      (payment.date === line.date ||
        (line.number !== undefined && payment.number === line.number) ||
        (payment.noted === true && isNear(payment.date, line.date))),
  );
  if (same !== undefined) {
    const how = same.noted === true ? 'was marked as paid under To do' : 'is already recorded';
    return { line, verdict: 'booked', expected: null, why: `This payment ${how}, on ${same.date}.` };
  }
  const left = owed - line.cents;
  if (line.cents < 0) return { line, verdict: 'payment', expected: null, why: 'Refund from the auction.' };
  if (left < 0) {
    const why = `This is ${formatMoney(cents(-left))} more than is owed (${formatMoney(cents(owed))}).`;
    return { line, verdict: 'overpaid', expected: null, why };
  }
  if (left === 0) return { line, verdict: 'payment', expected: null, why: 'It pays all that is owed.' };
  const why = `A part: ${formatMoney(cents(left))} of ${formatMoney(cents(owed))} is still owed after it.`;
  return { line, verdict: 'part-payment', expected: null, why };
}

/** A transfer that was noted on Friday stands on the statement by the end of the next week. */
const NEAR_DAYS = 10;
const isNear = (noted: LocalDate, date: LocalDate | undefined): boolean =>
  date === undefined || Math.abs(daysBetween(noted, date)) <= NEAR_DAYS;

/** Two rows that say the same of the same car are one line printed twice. */
const isSameLine = (a: InvoiceLine, b: InvoiceLine): boolean =>
  a.what === b.what &&
  a.cost === b.cost &&
  a.cents === b.cents &&
  a.date === b.date &&
  a.number === b.number &&
  plainWords(a.label) === plainWords(b.label);
