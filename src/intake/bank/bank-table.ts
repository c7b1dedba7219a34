import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { sniffDialect } from '../csv/dialect.ts';
import { readRecords } from '../csv/records.ts';
import { isBlankRow } from '../open-table.ts';
import { readBankAmount } from './bank-amount.ts';
import { type BankRole, bankRoleOf, bankRoles } from './bank-roles.ts';
import { looksLikeDay } from './day-order.ts';

export interface BankRow {
  /** Counted from 1 as a spreadsheet does. */
  readonly row: number;
  readonly cells: readonly string[];
}

/** A statement as a table: what stands above its headings, its headings, and its rows, blank ones left out. */
export interface BankTable {
  readonly above: readonly BankRow[];
  /** Null when the rows begin at once. */
  readonly headings: readonly string[] | null;
  readonly rows: readonly BankRow[];
  /** What each column seems to hold. */
  readonly roles: readonly (BankRole | null)[];
}

const LONGEST_TEXT = 20_000_000;
const MOST_ROWS = 50_000;
const MOST_COLUMNS = 60;
const SEARCHED_FOR_HEADINGS = 40;
const SAMPLE_ROWS = 200;

/** Opens a bank statement that was exported as a table, in whatever order its columns stand. */
export function openBankTable(text: string): Outcome<BankTable> {
  if (text.trim() === '') return refuse('empty', 'It is empty. Choose another file, or paste some rows.');
  if (/^\ufeff?\s*<(?:!doctype|html|head|body|table|\?xml)/i.test(text.slice(0, 200)))
    return refuse(
      'web-page',
      'This is the source of a web page, not a statement. Download the statement as CSV or OFX.',
    );
  if (text.length > LONGEST_TEXT)
    return refuse('too-large', 'This is longer than 20 million characters. Export a shorter time.');
  const rows: BankRow[] = [];
  for (const { firstRow, records } of readRecords(text, sniffDialect(text)))
    for (const [i, cells] of records.entries()) {
      if (isBlankRow(cells)) continue;
      rows.push({ row: firstRow + i, cells });
      if (rows.length > MOST_ROWS)
        return refuse('too-large', 'This statement has more than 50,000 rows. Export a shorter time.');
    }
  const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  if (width > MOST_COLUMNS)
    return refuse(
      'too-wide',
      `This has ${width.toLocaleString('en-US')} columns. A statement has no more than ${MOST_COLUMNS}: leave out those that are not needed.`,
    );
  const at = headingsAt(rows);
  const headings = at === null ? null : (rows[at]?.cells ?? null);
  const first = at === null ? rows.findIndex(isLine) : at + 1;
  const lines = rows.slice(Math.max(0, first));
  const sample = lines.filter(isLine).slice(0, SAMPLE_ROWS);
  if (sample.length === 0)
    return refuse(
      'no-lines',
      'No row has a day and an amount. Choose the statement with its transactions, as CSV or OFX.',
    );
  const roles = bankRoles(
    headings,
    sample.map(({ cells }) => cells),
  );
  return ok({ above: rows.slice(0, at ?? Math.max(0, first)), headings, rows: lines, roles });
}

const isAmount = (cell: string): boolean => /\d/.test(cell) && readBankAmount(cell).ok;
const isLine = ({ cells }: BankRow): boolean =>
  cells.some(looksLikeDay) && cells.some((cell) => !looksLikeDay(cell) && isAmount(cell));

/** The row above the lines that names most columns. */
function headingsAt(rows: readonly BankRow[]): number | null {
  const scores = rows.slice(0, SEARCHED_FOR_HEADINGS).map(({ cells }) => {
    if (cells.some((cell) => looksLikeDay(cell) || isAmount(cell))) return 0;
    return new Set(
      cells
        .slice(0, MOST_COLUMNS)
        .map(bankRoleOf)
        .filter((role) => role !== null),
    ).size;
  });
  const best = scores.reduce((a, score, i) => (score > (scores[a] ?? 0) ? i : a), 0);
  return (scores[best] ?? 0) >= 2 ? best : null;
}
