import type { CostKind } from '../../domain/accounts/cost-kind.ts';
import { attempt } from '../../domain/attempt.ts';
import type { InvoiceLine } from '../../domain/books/invoice/invoice-line.ts';
import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import type { LocalDate, LocalTime } from '../../domain/time/local-date.ts';
import { writtenDate } from '../../domain/time/written-date.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import { unguardCell } from '../csv/guard-cell.ts';
import { readRecords } from '../csv/records.ts';
import { isBlankRow, type Table } from '../open-table.ts';
import type { InvoiceColumn } from './map-invoice.ts';

export interface InvoiceFault {
  readonly row: number;
  readonly message: string;
}

/** Everything a file says, and every row that could not be read; the others are not touched by it. */
export interface ReadInvoice {
  readonly lines: readonly InvoiceLine[];
  readonly faults: readonly InvoiceFault[];
}

const AMOUNTS: readonly InvoiceRole[] = ['amount', 'hammer', 'fee', 'transport', 'other', 'credit', 'payment'];

/** @param today for dates that are written without a year */
export function readInvoice(table: Table, columns: readonly InvoiceColumn[], today: LocalDate): ReadInvoice {
  const lines: InvoiceLine[] = [];
  const faults: InvoiceFault[] = [];
  for (const { firstRow, records, problems } of readRecords(table.text, table.dialect)) {
    records.forEach((cells, i) => {
      const row = firstRow + i;
      if (row < table.firstRow || isBlankRow(cells)) return;
      const quoting = problems.get(row);
      if (quoting !== undefined) faults.push({ row, message: quoting });
      const read = attempt(() => readRow(row, cells, columns, today, lines, faults));
      if (!read.ok) faults.push({ row, message: `This row can’t be read: ${read.short}. The other rows are.` });
    });
  }
  return { lines, faults };
}

function readRow(
  row: number,
  cells: readonly string[],
  columns: readonly InvoiceColumn[],
  today: LocalDate,
  lines: InvoiceLine[],
  faults: InvoiceFault[],
): void {
  const textOf = (role: InvoiceRole): string => {
    const column = columns.find((each) => each.role === role);
    const cell = column === undefined ? '' : (cells[column.column] ?? '');
    return isBlankCell(cell) ? '' : unguardCell(cell.trim());
  };
  const words = textOf('words');
  const [vin, lotNumber, number] = [textOf('vin'), textOf('lot'), textOf('number').slice(0, 120)];
  if (vin === '' && lotNumber === '' && isSum(words, cells)) return;
  const date = readDay(textOf('date'), today);
  if (!date.ok) {
    faults.push({ row, message: date.message });
    return;
  }
  const made: InvoiceLine[] = [];
  for (const { column, heading, role } of columns) {
    const cell = cells[column];
    if (role === null || !AMOUNTS.includes(role) || cell === undefined || isBlankCell(cell)) continue;
    const amount = parseMoney(unguardCell(cell.trim()));
    if (!amount.ok) {
      faults.push({ row, message: `${heading}: ${amount.message}` });
      return;
    }
    if (amount.value === 0) continue;
    const label = (role === 'amount' ? words || heading : heading).slice(0, 120);
    made.push({
      id: `${row}.${column}`,
      row,
      ...(vin !== '' && { vin: vin.slice(0, 40) }),
      ...(lotNumber !== '' && { lotNumber: lotNumber.slice(0, 60) }),
      ...(date.value !== undefined && { date: date.value }),
      ...(number !== '' && { number }),
      label,
      ...kindOf(role, label, amount.value),
    });
  }
  const fault = sumFault(textOf('total'), made);
  if (fault !== null) faults.push({ row, message: fault });
  lines.push(...made);
}

/** "Total", "Balance due": what stands under the rows and is for no car. */
const isSum = (words: string, cells: readonly string[]): boolean =>
  /\b(?:total|subtotal|balance|sum)\b/.test(plainWords(words === '' ? cells.join(' ') : words));

function readDay(
  text: string,
  today: LocalDate,
): { readonly ok: true; readonly value: LocalDate | undefined } | { readonly ok: false; readonly message: string } {
  if (text === '') return { ok: true, value: undefined };
  // The day alone: a time of day behind it says nothing here.
  const day = text.replace(/[T ]\d{1,2}:\d\d(?::\d\d)?(?:\.\d+)?(?: ?[AP]M)?(?:Z| ?[A-Z]{2,4})?$/i, '');
  return writtenDate(day, '23:59' as LocalTime, { date: today, time: '00:00' as LocalTime });
}

function kindOf(role: InvoiceRole, label: string, amount: Cents): Pick<InvoiceLine, 'what' | 'cost' | 'cents'> {
  const words = plainWords(label);
  if (
    role === 'payment' ||
    (role === 'amount' && /\b(?:payments?|paid|received|wire|check|remitted|refund)\b/.test(words))
  ) {
    const back = /\b(?:refund\w*|returned|paid back|money back)\b/.test(words);
    return { what: 'payment', cost: 'other', cents: cents(back ? -Math.abs(amount) : Math.abs(amount)) };
  }
  if (role === 'credit') return { what: 'cost', cost: 'fee', cents: cents(-Math.abs(amount)) };
  const named = role === 'hammer' || role === 'fee' || role === 'transport' || role === 'other';
  return { what: 'cost', cost: named ? role : costOfWords(words), cents: amount };
}

const COSTS: readonly (readonly [CostKind, RegExp])[] = [
  ['interest', /\binterest\b/],
  ['floor-fee', /\b(?:floor ?plan|curtailment)\b/],
  ['transport', /\b(?:transport\w*|freight|ship\w*|haul\w*|delivery)\b/],
  ['hammer', /\b(?:hammer|sale price|sold price|purchase price|selling price|vehicle price|vehicle|bid)\b(?!.*\bfee)/],
  ['recon', /\b(?:recon\w*|repairs?|detail\w*|tires?)\b/],
  ['fee', /\b(?:fees?|pass|papers?|documents?|premium|charges?)\b/],
];

const costOfWords = (words: string): CostKind => COSTS.find(([, pattern]) => pattern.test(words))?.[0] ?? 'other';

/** A row that states its own total must come to it; payments may or may not be in it. */
function sumFault(text: string, made: readonly InvoiceLine[]): string | null {
  if (text === '' || made.length === 0) return null;
  const total = parseMoney(text);
  if (!total.ok) return `Total: ${total.message}`;
  const sum = (lines: readonly InvoiceLine[]) => lines.reduce((all, line) => all + line.cents, 0);
  const costs = sum(made.filter(({ what }) => what === 'cost'));
  const paid = sum(made.filter(({ what }) => what === 'payment'));
  if (total.value === costs || total.value === costs - paid) return null;
  return `The amounts in this row add up to ${formatMoney(cents(costs))}, but its total says ${formatMoney(total.value)}. Ask the venue which is right; the amounts are shown as listed.`;
}
