import { type Cents, cents } from '../../domain/money/cents.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { type Outcome, ok } from '../../domain/outcome.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import { unguardCell } from '../csv/guard-cell.ts';

/** Credit or debit, behind or before the figure, as statements print it. */
const BEHIND = /^(.*\d\)?)\s*(cr|dr)\.?$/i;
const BEFORE = /^(cr|dr)\.?\s*(\(?[$\d].*)$/i;
/** A currency sign outside of the parentheses, or between the minus and the figure with blanks around. */
const SIGN_OUTSIDE = /^\$\s*(\(.*\))$/;
const FREE = /^(?:n\/?c|no charge|free|waived|included|incl\.?)$/i;

/** Whether a cell of an amount says that there is nothing to pay. */
export const isFree = (cell: string): boolean => isBlankCell(cell) || FREE.test(cell.trim());

/** An amount as an invoice writes it: "25.00 CR" is a credit, and a column of cents holds cents. */
export function readInvoiceAmount(cell: string, heading: string, decimal: DecimalMark | undefined): Outcome<Cents> {
  const text = unguardCell(cell.trim());
  const marked = BEHIND.exec(text);
  const before = marked === null ? BEFORE.exec(text) : null;
  const mark = (marked?.[2] ?? before?.[1])?.toLowerCase();
  const figure = (marked?.[1] ?? before?.[2] ?? text).trim().replace(SIGN_OUTSIDE, '$1');
  const amount = parseMoney(figure.replace(/^-\s+/, '-'), decimal === undefined ? {} : { decimal });
  if (!amount.ok) return amount;
  const signed = mark === 'cr' ? -Math.abs(amount.value) : amount.value;
  return ok(cents(inCents(heading, figure) ? signed / 100 : signed));
}

const inCents = (heading: string, figure: string): boolean =>
  /\bcents?\b/.test(plainWords(heading)) && /^-?\d+$/.test(figure) && Number(figure) % 1 === 0;

/** The mark before the decimals in these cells, where one of them can be read in one way only: "1.250,00". */
export function decimalMarkOf(cells: readonly string[]): DecimalMark | undefined {
  const commas = cells.some((cell) => /\d,\d\d(?!\d)/.test(cell) && !/\.\d\d(?!\d)/.test(cell));
  const points = cells.some((cell) => /\.\d\d(?!\d)/.test(cell));
  return commas && !points ? ',' : undefined;
}
