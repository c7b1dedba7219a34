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
import type { Links } from './linked-wordings.ts';

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
  readonly won?: LocalDate | undefined;
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
 * - `payment`, `part-payment`, `overpaid`: money, and what it leaves;
 * - `came-back`: money that went the other way: a refund, or a payment that the bank did not honor;
 * - `which-day`: its day is not certain;
 * - `unsure`: money paid, or a charge: nothing in the file says which.
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
  | 'overpaid'
  | 'came-back'
  | 'which-day'
  | 'unsure';

export interface JudgedLine {
  readonly line: InvoiceLine;
  readonly verdict: Verdict;
  readonly expected: ExpectedLine | null;
  readonly why: string;
}

/** Holds the lines that were matched to one car against what was expected and what is booked, in the order of the file. */
export function judgeLines(lines: readonly InvoiceLine[], car: BookedCar, links: Links = new Map()): JudgedLine[] {
  const seen: InvoiceLine[] = [];
  const answered = new Map<string, InvoiceLine>();
  let owed: number = car.owed;
  const known = lines.map((line) => withDay(withKind(withLink(line, car.expected, links), car.expected), car.won));
  const billed = new Set(
    [...known.filter(({ what }) => what === 'cost'), ...car.costs].map((one) => answeredBy(one, car.expected)),
  );
  return known.map((line) => {
    const twice = seen.find((other) => isSameLine(other, line));
    seen.push(line);
    if (twice !== undefined)
      return { line, verdict: 'twice', expected: null, why: `Same as row ${twice.row} of this file.` };
    if (line.what === 'unsure') return { line, verdict: 'unsure', expected: null, why: UNSURE };
    const judged =
      line.what === 'payment'
        ? judgePayment(line, car, owed)
        : onceOnly(withHint(judgeCost(line, car), car.expected, billed), answered);
    if (judged.verdict !== 'booked') owed += line.what === 'payment' ? -line.cents : line.cents;
    return askForDay(judged);
  });
}

/** A price or a fee that one line of the file answers is not answered by a second one, however that is worded. */
function onceOnly(judged: JudgedLine, answered: Map<string, InvoiceLine>): JudgedLine {
  const { line, expected, verdict } = judged;
  if (expected === null || line.cents < 0 || verdict === 'booked' || !ONCE.has(expected.cost)) return judged;
  const first = answered.get(expected.key);
  if (first === undefined) {
    answered.set(expected.key, line);
    return judged;
  }
  const why = `Row ${first.row} of this file already bills ${expected.label}. Recording this too would count both.`;
  return { ...judged, verdict: 'again', why };
}
const ONCE: ReadonlySet<CostKind> = new Set(['hammer', 'fee']);

const UNSURE = 'Money paid, or a charge? The file does not make it clear. Choose one.';

/** A year that was not written is taken as the nearest past, but a bill doesn't come before its car was won. */
function withDay(line: InvoiceLine, won: LocalDate | undefined): InvoiceLine {
  const early = line.dayDoubt === 'year-guessed' && line.date !== undefined && won !== undefined && line.date < won;
  return early ? { ...line, date: undefined } : line;
}

/** A day that nobody can be sure of is asked for before anything else about the line. */
function askForDay(judged: JudgedLine): JudgedLine {
  const { line } = judged;
  if (line.dayDoubt === 'to-come')
    return { ...judged, verdict: 'which-day', why: `${line.date} is still to come. Check the day. ${judged.why}` };
  if (line.dayDoubt === 'year-guessed' && line.date === undefined) {
    const why = `Its day has no year, and the nearest one past is before the car was won. Write the date. ${judged.why}`;
    return { ...judged, verdict: 'which-day', why };
  }
  return judged;
}

/** A line worded otherwise than what it stands for answers that. What is linked was said to be a cost. */
function withLink(line: InvoiceLine, expected: readonly ExpectedLine[], links: Links): InvoiceLine {
  const name = links.get(plainWords(line.label));
  const meant = name === undefined ? undefined : expected.find(({ label }) => plainWords(label) === name);
  if (meant === undefined || line.what === 'payment' || (line.raises ?? 0) < 0) return line;
  return { ...line, what: 'cost', cost: meant.cost, against: meant.key, cents: line.raises ?? line.cents };
}

/** Points at a price or a fee of the same amount that no bill has come for: it may be this one in other words. */
function withHint(
  judged: JudgedLine,
  expected: readonly ExpectedLine[],
  billed: ReadonlySet<string | undefined>,
): JudgedLine {
  if (judged.verdict !== 'not-expected' || judged.line.cents < 0) return judged;
  const alike = expected.find(
    ({ key, cost, cents: amount }) => ONCE.has(cost) && amount === judged.line.cents && !billed.has(key),
  );
  if (alike === undefined) return judged;
  return {
    ...judged,
    why: `${judged.why} Its amount is that of ${alike.label}: choose it if this is the same in other words.`,
  };
}

/** "Other" becomes a fee if the fee schedule has a fee of that name, and so does what may be money by its words alone. */
function withKind(line: InvoiceLine, expected: readonly ExpectedLine[]): InvoiceLine {
  if (line.what === 'unsure' && line.raises !== undefined && line.raises > 0) {
    const words = plainWords(line.label);
    const named = expected.find(({ cost, label }) => cost === 'fee' && plainWords(label) === words);
    if (named !== undefined) return { ...line, what: 'cost', cost: 'fee', cents: line.raises };
  }
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
  if (line.cents < 0)
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
  if (line.cents < 0) return { line, verdict: 'came-back', expected: null, why: backInWords(line, car) };
  if (left < 0) {
    const why = `This is ${formatMoney(cents(-left))} more than is owed (${formatMoney(cents(owed))}).`;
    return { line, verdict: 'overpaid', expected: null, why };
  }
  if (left === 0) return { line, verdict: 'payment', expected: null, why: 'It pays all that is owed.' };
  const why = `A part: ${formatMoney(cents(left))} of ${formatMoney(cents(owed))} is still owed after it.`;
  return { line, verdict: 'part-payment', expected: null, why };
}

/** Whether it takes back a payment that is recorded, or is a refund. */
function backInWords(line: InvoiceLine, car: BookedCar): string {
  const paid = car.payments.find((payment) => payment.cents === -line.cents);
  return paid === undefined
    ? 'A refund, or a payment that was returned. Check that it came.'
    : `It undoes the payment of ${paid.date}. Check with the bank.`;
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
