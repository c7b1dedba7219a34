import { type Cents, cents } from '../../domain/money/cents.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import { unguardCell } from '../csv/guard-cell.ts';
import { decimalMarkOf } from '../invoices/invoice-amount.ts';
import { readInvoiceDay } from '../invoices/invoice-day.ts';
import { readBankAmount } from './bank-amount.ts';
import type { BankRole } from './bank-roles.ts';
import type { BankRow, BankTable } from './bank-table.ts';
import { type DayOrder, dayOrder, looksLikeDay, monthFirst } from './day-order.ts';
import { type BalancedLine, checkBalances } from './running-balance.ts';
import { type StatementRead, type StatementRow, withKeys } from './statement-read.ts';

/** What only somebody can say where the file leaves it open. */
export interface SaidOfTable {
  readonly account: string;
  readonly roles: readonly (BankRole | null)[];
  readonly order?: DayOrder | undefined;
  /** Of plain amounts above zero, where nothing else says: whether they are money in. */
  readonly plain?: 'in' | 'out' | undefined;
  /** The balances as the paper statement prints them, where the file has none. */
  readonly opening?: Cents | undefined;
  readonly closing?: Cents | undefined;
}

/** What has to be said before the lines can be read. */
export type TableDoubt = 'columns' | 'day-order' | 'direction';

export interface TableRead {
  readonly doubts: readonly TableDoubt[];
  /** Undefined while a doubt is open. */
  readonly read?: StatementRead | undefined;
}

const OPENING = /\b(?:opening|beginning|starting|previous|prior|brought forward|balance forward)\b/;
const CLOSING =
  /\b(?:closing|ending|final|new|carried forward)\b.*\bbalance\b|\bbalance\b.*\b(?:closing|ending|carried forward)\b/;
/** A row that says no more than which balance it holds, with its day. */
const BALANCE_ONLY =
  /^(?:opening|beginning|starting|previous|prior|closing|ending|final|new|current)? ?(?:ledger |statement |account )?balance(?: (?:brought|carried)? ?forward)?$/;
const TOTAL = /^(?:sub ?|grand )?totals?\b/;
const PENDING = /\b(?:pending|processing|hold|authorization)\b/;

/** Reads the lines of a statement. Nothing is guessed that could turn an amount or a day around: it is asked. */
export function readBankTable(table: BankTable, said: SaidOfTable, today: LocalDate): TableRead {
  const { roles } = said;
  const column = (role: BankRole) => roles.indexOf(role);
  const has = (role: BankRole) => column(role) >= 0;
  if (!has('date') || !(has('amount') || has('in') || has('out'))) return { doubts: ['columns'] };
  const cell = ({ cells }: BankRow, role: BankRole) => unguardCell((cells[column(role)] ?? '').trim());
  const order =
    said.order ??
    dayOrder(
      table.rows.map((row) => cell(row, 'date')),
      today,
    );
  const money = table.rows.flatMap((row) =>
    (['amount', 'in', 'out', 'balance'] as const).map((role) => cell(row, role)),
  );
  const decimal = decimalMarkOf(money.filter((text) => text !== ''));
  const anchor = periodEnd(table.above, today);
  const context: RowContext = { cell, order: order ?? 'month-first', decimal, today: anchor, roles };
  const found = table.rows.map((row) => readRow(row, context));
  const directions = directionOf(found, said, has);
  const doubts: TableDoubt[] = [
    ...(order === null ? ['day-order' as const] : []),
    ...(directions === null ? ['direction' as const] : []),
  ];
  if (directions === null || doubts.length > 0) return { doubts };
  return { doubts, read: statementOf(found, directions, table, said) };
}

interface RowContext {
  readonly cell: (row: BankRow, role: BankRole) => string;
  readonly order: DayOrder;
  readonly decimal: DecimalMark | undefined;
  readonly today: LocalDate;
  readonly roles: readonly (BankRole | null)[];
}

/** A row as far as it says something by itself. */
interface FoundRow {
  readonly row: number;
  readonly date?: LocalDate;
  readonly cents?: Cents;
  /** Whether it says itself which way the money went. */
  readonly signed?: boolean;
  readonly balance?: Cents;
  readonly text: string;
  readonly check?: string;
  readonly id?: string;
  readonly fault?: string;
  readonly note?: string;
  readonly is?: 'opening' | 'closing';
}

function readRow(row: BankRow, context: RowContext): FoundRow {
  const { cell, decimal } = context;
  const text = context.roles
    .flatMap((role, i) =>
      role === 'text' && !isBlankCell(row.cells[i] ?? '') ? [unguardCell((row.cells[i] ?? '').trim())] : [],
    )
    .join(' · ')
    .slice(0, 300);
  const balance = readBankAmount(cell(row, 'balance'), decimal);
  const check = cell(row, 'check')
    .replace(/^(?:check|chk|ck|#|no\.?|\s)+(?=\d)/i, '')
    .replace(/^0+(?=.)/, '')
    .slice(0, 40);
  const kind = cell(row, 'kind');
  const id = cell(row, 'id');
  const base = {
    row: row.row,
    text: text === '' ? (kind === '' ? (check === '' ? 'No description' : `Check ${check}`) : kind) : text,
    ...(balance.ok && { balance: balance.value.cents }),
    ...(/\d/.test(check) && { check }),
    ...(id !== '' && { id: `I${id}` }),
  };
  const words = plainWords(row.cells.join(' '));
  const amount = amountOf(row, context);
  const day = cell(row, 'date');
  const isDay = looksLikeDay(day);
  if (amount === null || !isDay || BALANCE_ONLY.test(plainWords(text))) {
    const figure = amount?.ok === true ? amount.value.cents : undefined;
    const sum = balance.ok ? balance.value.cents : figure;
    if (OPENING.test(words))
      return { ...base, ...(sum !== undefined && { balance: sum }), is: 'opening', note: 'The opening balance.' };
    if (CLOSING.test(words) || (sum !== undefined && /\bbalance\b/.test(words)))
      return { ...base, ...(sum !== undefined && { balance: sum }), is: 'closing', note: 'The closing balance.' };
    if (TOTAL.test(words)) return { row: row.row, text: base.text, note: 'A total: it is no line.' };
    if (PENDING.test(words) && !isDay)
      return { row: row.row, text: base.text, note: 'Not booked by the bank yet. It comes with a later statement.' };
    if (amount === null)
      return { row: row.row, text: base.text, note: isDay ? 'No amount stands in this row.' : 'No day and no amount.' };
    return {
      row: row.row,
      text: base.text,
      fault: day === '' ? 'This row has an amount and no day.' : `“${day}” was not understood as a day.`,
    };
  }
  if (!amount.ok) return { ...base, fault: amount.message };
  const date = readInvoiceDay(monthFirst(day, context.order), context.today, false);
  if (!date.ok) return { ...base, fault: date.message };
  if (/\bpending\b/.test(words))
    return {
      row: row.row,
      text: base.text,
      note: `“${base.text}” is pending: it is read with a later statement, once the bank has booked it.`,
    };
  if (date.value.date === undefined) return { ...base, fault: 'This row has no day.' };
  if (date.value.dayDoubt === 'to-come')
    return { ...base, fault: `${date.value.date} is in the future. Check its year.` };
  if (TOTAL.test(words)) return { row: row.row, text: base.text, note: 'A total: it is no line.' };
  if (amount.value.cents === 0) return { ...base, date: date.value.date, note: `“${base.text}” has an amount of $0.` };
  return { ...base, date: date.value.date, ...amount.value };
}

type Amount = Outcome<{ readonly cents: Cents; readonly signed: boolean }>;

const OUT =
  /^(?:d|dr|debit|deb|out|-|withdrawal|check|cheque|payment|fee|charge|purchase|wire out|ach debit|sent)\b|^-$/;
const IN = /^(?:c|cr|credit|cred|in|\+|deposit|refund|interest|return|wire in|ach credit|received)\b|^\+$/;

/** Null where the row has no amount at all. */
function amountOf(row: BankRow, { cell, decimal }: RowContext): Amount | null {
  const [out, into, plain] = (['out', 'in', 'amount'] as const).map((role) => cell(row, role));
  const filled = (text: string | undefined): text is string => text !== undefined && !isBlankCell(text);
  const sides = (
    [
      ['out', out],
      ['in', into],
    ] as const
  ).flatMap(([side, text]) => {
    if (!filled(text)) return [];
    const read = readBankAmount(text, decimal);
    return read.ok && read.value.cents === 0 ? [] : [{ side, read }];
  });
  const [one, two] = sides;
  if (two !== undefined) return refuse('both', 'This row has money in and money out. Check the columns.');
  if (one !== undefined) {
    if (!one.read.ok) return one.read;
    // Some banks write what went out below zero in its own column.
    const size = one.side === 'out' ? -Math.abs(one.read.value.cents) : one.read.value.cents;
    return ok({ cents: cents(size), signed: true });
  }
  if (!filled(plain)) return filled(out) || filled(into) ? ok({ cents: cents(0), signed: true }) : null;
  const read = readBankAmount(plain, decimal);
  if (!read.ok || read.value.signed) return read;
  const kind = cell(row, 'kind').toLowerCase();
  if (OUT.test(kind)) return ok({ cents: cents(-read.value.cents), signed: true });
  if (IN.test(kind)) return ok({ cents: read.value.cents, signed: true });
  return ok(read.value);
}

/** What plain amounts above zero are: 1 money in, -1 money out. Null where nothing says. */
function directionOf(
  rows: readonly FoundRow[],
  said: SaidOfTable,
  has: (role: BankRole) => boolean,
): 1 | -1 | 'by balance' | null {
  const plain = rows.filter(
    ({ cents: amount, signed, date, note }) =>
      amount !== undefined && date !== undefined && note === undefined && signed === false,
  );
  if (said.plain !== undefined) return said.plain === 'in' ? 1 : -1;
  if (plain.length === 0) return 1;
  const signed = rows.some(({ signed: is, cents: amount = 0 }) => is === true && amount < 0);
  if (signed && !has('kind')) return 1;
  if (plain.every(({ balance }) => balance !== undefined)) return 'by balance';
  return null;
}

function statementOf(
  rows: readonly FoundRow[],
  direction: 1 | -1 | 'by balance',
  table: BankTable,
  said: SaidOfTable,
): StatementRead {
  const { account } = said;
  const faults: StatementRow[] = [];
  const notes: StatementRow[] = [];
  const lines: (FoundRow & BalancedLine & { readonly date: LocalDate })[] = [];
  for (const row of rows) {
    if (row.fault !== undefined) faults.push({ row: row.row, message: row.fault });
    else if (row.note !== undefined) notes.push({ row: row.row, message: row.note });
    else if (row.date !== undefined && row.cents !== undefined) {
      const sign = row.signed === false && direction === -1 ? -1 : 1;
      lines.push({
        ...row,
        date: row.date,
        cents: cents(sign * row.cents),
        free: row.signed === false && direction === 'by balance',
      });
    }
  }
  const stated = {
    opening: said.opening ?? rows.find(({ is }) => is === 'opening')?.balance ?? statedIn(table.above, OPENING),
    closing: said.closing ?? rows.findLast(({ is }) => is === 'closing')?.balance ?? statedIn(table.above, CLOSING),
  };
  const checked = checkBalances(lines, stated);
  faults.push(...checked.faults);
  const inOrder = checked.newestFirst ? checked.lines.toReversed() : checked.lines;
  const sorted = inOrder.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  return {
    account,
    from: sorted[0]?.date,
    to: sorted.at(-1)?.date,
    opening: checked.opening,
    closing: checked.closing,
    lines: withKeys(
      account,
      sorted.map(({ date, cents: amount, text, check, id }) => ({
        date,
        cents: amount,
        text,
        id,
        ...(check !== undefined && { check }),
      })),
    ),
    dropped: [],
    faults,
    notes,
    balance: checked.balance,
  };
}

/** A balance that stands above the headings. */
function statedIn(above: readonly BankRow[], pattern: RegExp): Cents | undefined {
  for (const { cells } of above) {
    if (!pattern.test(plainWords(cells.join(' ')))) continue;
    const amounts = cells.flatMap((cell) => {
      const read = looksLikeDay(cell) ? null : readBankAmount(cell.replace(/^.*:\s*/, ''));
      return read?.ok ? [read.value.cents] : [];
    });
    const last = amounts.at(-1);
    if (last !== undefined) return last;
  }
  return undefined;
}

/** The end of the period that a statement names above its headings, where it lies in the past: days without a year are before it. */
function periodEnd(above: readonly BankRow[], today: LocalDate): LocalDate {
  const days = above.flatMap(({ cells }) =>
    cells.flatMap((cell) =>
      [...cell.matchAll(/\d{4}-\d\d-\d\d|\d{1,2}\/\d{1,2}\/\d{4}|[A-Z][a-z]{2,8}\.? \d{1,2}, \d{4}/g)].map(
        ([text]) => text,
      ),
    ),
  );
  const read = days.flatMap((text) => {
    const day = readInvoiceDay(text, today, false);
    return day.ok && day.value.date !== undefined && day.value.date <= today ? [day.value.date] : [];
  });
  return read.sort().at(-1) ?? today;
}
