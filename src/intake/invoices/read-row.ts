import type { InvoiceLine } from '../../domain/books/invoice/invoice-line.ts';
import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import { cameBack, natureOf } from '../../domain/books/invoice/nature-of.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { findVins } from '../../domain/vin/find-vins.ts';
import { costOfWords } from './cost-of-words.ts';
import { isFree, readInvoiceAmount } from './invoice-amount.ts';
import { readInvoiceDay } from './invoice-day.ts';
import type { InvoiceColumn } from './map-invoice.ts';
import { textOf } from './row-text.ts';
import { rowTotalFault } from './row-total.ts';

/** What the file as a whole says about how its rows are written. */
export interface InvoiceStyle {
  readonly today: LocalDate;
  readonly dayFirst: boolean;
  readonly decimal: DecimalMark | undefined;
  /** Whether amounts show by their sign, or by their column, if they raise or lower what is owed. */
  readonly signed: boolean;
}

export interface RowReading {
  readonly lines: readonly InvoiceLine[];
  readonly faults: readonly string[];
}

const AMOUNTS: readonly InvoiceRole[] = ['amount', 'hammer', 'fee', 'transport', 'other', 'credit', 'payment'];
/** Columns that are named by what the row says it is for, not by their heading. */
const NAMED_BY_WORDS: ReadonlySet<InvoiceRole> = new Set(['amount', 'credit', 'payment']);

/** Reads the amounts of one row. A cell that can't be read costs its row and no other. */
export function readInvoiceRow(
  row: number,
  cells: readonly string[],
  columns: readonly InvoiceColumn[],
  style: InvoiceStyle,
): RowReading {
  const text = (role: InvoiceRole) => textOf(cells, columns, role);
  const words = text('words').replace(/\s+/g, ' ');
  const vin = vinOf(text('vin'), words);
  const [lotNumber, number] = [text('lot'), text('number').slice(0, 120)];
  const day = readInvoiceDay(text('date'), style.today, style.dayFirst);
  if (!day.ok) return { lines: [], faults: [day.message] };
  const lines: InvoiceLine[] = [];
  for (const { column, heading, role } of columns) {
    const cell = cells[column];
    if (role === null || !AMOUNTS.includes(role) || cell === undefined || isFree(cell)) continue;
    const amount = readInvoiceAmount(cell, heading, style.decimal);
    if (!amount.ok) return { lines: [], faults: [`${heading}: ${amount.message}`] };
    if (amount.value === 0) continue;
    const label = (NAMED_BY_WORDS.has(role) ? words || heading : heading).slice(0, 120);
    lines.push({
      id: `${row}.${column}`,
      row,
      ...(vin !== '' && { vin: vin.slice(0, 40) }),
      ...(lotNumber !== '' && { lotNumber: lotNumber.slice(0, 60) }),
      ...day.value,
      ...(number !== '' && { number }),
      label,
      ...kindOf(role, label, amount.value, style.signed),
    });
  }
  const fault = rowTotalFault(text('total'), lines);
  return { lines, faults: fault === null ? [] : [fault] };
}

/** The VIN of a row: what its own column holds, else the only one among its words. */
function vinOf(cell: string, words: string): string {
  const [one, another] = findVins(cell === '' ? words : cell);
  return one !== undefined && another === undefined ? one : cell;
}

type Kind = Pick<InvoiceLine, 'what' | 'cost' | 'cents' | 'raises'>;

function kindOf(role: InvoiceRole, label: string, amount: Cents, signed: boolean): Kind {
  if (role === 'hammer' || role === 'fee' || role === 'transport' || role === 'other')
    return { what: 'cost', cost: role, cents: amount, raises: amount };
  const cost = costOfWords(plainWords(label));
  const size = cents(Math.abs(amount));
  if (role === 'payment') {
    const back = cameBack(label);
    return { what: 'payment', cost: 'other', cents: back ? cents(-size) : size, raises: back ? size : cents(-size) };
  }
  const raises = role === 'credit' ? cents(-size) : signed ? amount : undefined;
  const what = natureOf(label, raises);
  // What is unsure stays as it stands in the file until somebody says what it is.
  if (what === 'cost')
    return {
      what,
      cost: role === 'credit' && cost === 'other' ? 'fee' : cost,
      cents: raises ?? amount,
      ...(raises !== undefined && { raises }),
    };
  if (raises === undefined) return { what, cost, cents: size };
  return { what, cost, cents: what === 'unsure' ? raises : cents(-raises), raises };
}
