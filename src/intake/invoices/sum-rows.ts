import type { InvoiceLine } from '../../domain/books/invoice/invoice-line.ts';
import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import { isFree, readInvoiceAmount } from './invoice-amount.ts';
import type { InvoiceColumn } from './map-invoice.ts';
import { textOf } from './row-text.ts';

/** A total, a subtotal or a balance of the file, held against the rows above it. Nothing of it is recorded. */
export interface InvoiceSum {
  readonly row: number;
  readonly label: string;
  readonly stated: Cents;
  /** What is stated less what the rows come to; 0 when they agree. */
  readonly off: Cents;
}

const SUM = /\b(?:totals?|subtotal|balance|sum|(?:carried|brought) forward|amount due)\b/;
/** A row that is nothing but a sum is one beside a car, too. */
const NOTHING_BUT_A_SUM = /^(?:grand |\w+ )?(?:sub ?)?totals?(?: due| \d+)?$|^balance(?: due)?$/;
/** How many cars a bill is for is no money. */
const COUNT = /^(?:number of )?(?:units|cars|vehicles|lots)$/;
const OPENING = /\b(?:balance|brought) forward\b|\bopening balance\b/;
const SUMMED: ReadonlySet<InvoiceRole> = new Set([
  'amount',
  'hammer',
  'fee',
  'transport',
  'other',
  'credit',
  'payment',
]);

/** "Total", "Balance due": what stands under the rows and is for no car, or is a car's subtotal. */
export function isSumRow(cells: readonly string[], columns: readonly InvoiceColumn[]): boolean {
  const words = plainWords(textOf(cells, columns, 'words'));
  if (textOf(cells, columns, 'vin') !== '' || textOf(cells, columns, 'lot') !== '')
    return NOTHING_BUT_A_SUM.test(words) || NOTHING_BUT_A_SUM.test(plainWords(textOf(cells, columns, 'vin')));
  return COUNT.test(words) || SUM.test(words === '' ? plainWords(cells.join(' ')) : words);
}

/**
 * Holds each sum of a file against the rows above it: all of them, or those since the sum before. A sum forward from an
 * earlier page or an earlier bill is where the count begins.
 */
export function checkSums(
  sums: readonly { readonly row: number; readonly cells: readonly string[] }[],
  lines: readonly InvoiceLine[],
  columns: readonly InvoiceColumn[],
  decimal: DecimalMark | undefined,
): InvoiceSum[] {
  let before = 0;
  const opening = new Map<number, number>();
  return sums.flatMap(({ row, cells }) => {
    const label = (textOf(cells, columns, 'words') || 'Total').slice(0, 120);
    if (COUNT.test(plainWords(label))) return [];
    const since = before;
    before = row;
    return columns.flatMap(({ column, heading, role }) => {
      const cell = cells[column] ?? '';
      if (role === null || !SUMMED.has(role) || isFree(cell)) return [];
      const read = readInvoiceAmount(cell, heading, decimal);
      if (!read.ok) return [];
      const stated = read.value;
      const own = lines.filter(({ id, row: at }) => at < row && id === `${at}.${column}`);
      const all = own.reduce((sum, line) => sum + inColumn(line, role), 0);
      if (OPENING.test(plainWords(label)) && stated !== all) {
        opening.set(column, stated - all);
        return [{ row, label, stated, off: cents(0) }];
      }
      const whole = (opening.get(column) ?? 0) + all;
      const recent = own.filter((line) => line.row > since).reduce((sum, line) => sum + inColumn(line, role), 0);
      const sum = stated === recent || /\bsub ?total\b/.test(plainWords(label)) ? recent : whole;
      return [{ row, label, stated, off: cents(stated - sum) }];
    });
  });
}

/** What a line adds to the sum of its column: money that was paid has a column of its own, or a minus sign. */
function inColumn(line: InvoiceLine, role: InvoiceRole): number {
  if (role === 'credit' || role === 'payment') return -(line.raises ?? -line.cents);
  return line.raises ?? line.cents;
}

/** What to say of a sum that its rows don't come to. */
export function sumFault({ label, stated, off }: InvoiceSum): string {
  const rows = formatMoney(cents(stated - off));
  return `“${label}” says ${formatMoney(stated)}, but the rows add up to ${rows}, ${formatMoney(cents(Math.abs(off)))} ${off > 0 ? 'less' : 'more'}. Ask the venue which is right; rows that could not be read are not in it.`;
}
