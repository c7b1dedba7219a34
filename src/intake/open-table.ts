import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import { readVin } from '../domain/vin/read-vin.ts';
import { isBlankCell } from './columns/blank-cell.ts';
import { LOOKS_OF, lookOfCells } from './columns/look-of-cells.ts';
import { readHeading } from './columns/read-heading.ts';
import { type Dialect, sniffDialect } from './csv/dialect.ts';
import { readRecords } from './csv/records.ts';

/** A table that was found in a text: how it is written, its headings, and its first rows. */
export interface Table {
  readonly text: string;
  readonly dialect: Dialect;
  /** Null when the rows begin at once, as in cells copied from the middle of a sheet. */
  readonly headings: readonly string[] | null;
  /** Row number of the first row that holds a lot, counted from 1 as a spreadsheet does. */
  readonly firstRow: number;
  /** Rows above the headings, such as the name of the sale: shown, and read no further. */
  readonly above: readonly (readonly string[])[];
  /** The first rows, blank ones left out. */
  readonly sample: readonly (readonly string[])[];
}

/** Longer text is refused before anything is read. */
export const LONGEST_TEXT = 200_000_000;
const SAMPLE_ROWS = 50;
/** Headings further down than this are not found. */
const SEARCHED_FOR_HEADINGS = 10;
/** Cells of a row that are looked at for headings; a row of a million is no row of headings. */
const CELLS_SEARCHED = 2000;

interface Numbered {
  readonly row: number;
  readonly cells: readonly string[];
}

/** Looks at the beginning of a file or of pasted text: what keeps its cells apart, where its headings are. */
export function openTable(given: string): Outcome<Table> {
  // Null characters say nothing; damaged files and some exports have them between the letters.
  const text = withLineEnds(given.includes('\0') ? given.replaceAll('\0', '') : given);
  if (text.length > LONGEST_TEXT) return refuse('too-large', 'This is more than 200 million characters. Split it.');
  if (text.trim() === '') return refuse('empty', 'It is empty. Choose another file, or paste some rows.');
  if (/^\ufeff?\s*<(?:!doctype|html|head|body|table|\?xml)/i.test(text.slice(0, 200))) {
    return refuse(
      'web-page',
      'This is the source of a web page, not a table. Open the page and copy the table’s cells.',
    );
  }
  const dialect = sniffDialect(text);
  const first = firstRows(text, dialect, SEARCHED_FOR_HEADINGS + SAMPLE_ROWS);
  const found = findHeadings(first);
  const rows = first.slice(found === null ? 0 : found.index + 1);
  if (rows.length === 0) {
    return refuse(
      'headings-only',
      'There are headings but no rows under them. Choose another file, or paste the rows too.',
    );
  }
  return ok({
    text,
    dialect,
    headings: found === null ? null : found.headings,
    firstRow: rows[0]?.row ?? 1,
    above: found === null ? [] : first.slice(0, found.index).map(({ cells }) => cells),
    sample: rows.slice(0, SAMPLE_ROWS).map(({ cells }) => cells),
  });
}

/** A file put together from several can end a line with CR where the others end with LF. Within quotes it is the cell's own. */
const withLineEnds = (text: string): string =>
  text.includes('\n') && /\r(?![\r\n])/.test(text)
    ? text.replace(/"[^"]*"|\r(?![\r\n])/g, (part) => (part === '\r' ? '\n' : part))
    : text;

/** Whether every cell of a row is blank; such rows are counted and otherwise passed over. */
export const isBlankRow = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

function firstRows(text: string, dialect: Dialect, most: number): readonly Numbered[] {
  const rows: Numbered[] = [];
  for (const { firstRow, records } of readRecords(text, dialect)) {
    for (const [i, cells] of records.entries()) {
      if (!isBlankRow(cells)) rows.push({ row: firstRow + i, cells });
      if (rows.length === most) return rows;
    }
  }
  return rows;
}

/** The row that names most fields; or a first row of words over rows of figures, in whatever language. */
function findHeadings(rows: readonly Numbered[]): { index: number; headings: readonly string[] } | null {
  const scores = rows.slice(0, SEARCHED_FOR_HEADINGS).map(({ cells }) => namedFields(cells));
  const best = scores.reduce((a, score, i) => (score > (scores[a] ?? 0) ? i : a), 0);
  const score = scores[best] ?? 0;
  const cells = rows[best]?.cells ?? [];
  const enough = score > 1 || (score === 1 && (filledIn(cells) === 1 || isBorneOut(cells, rows.slice(best + 1))));
  if (enough) return { index: best, headings: cells };
  return looksLikeHeadings(rows) ? { index: 0, headings: rows[0]?.cells ?? [] } : null;
}

const filledIn = (cells: readonly string[]): number => cells.filter((cell) => !isBlankCell(cell)).length;

/** A single cell such as "VIN" among unknown ones is a heading if VINs stand under it. */
function isBorneOut(cells: readonly string[], below: readonly Numbered[]): boolean {
  const column = cells.findIndex((cell) => readHeading(cell)?.exact === true);
  const field = readHeading(cells[column] ?? '')?.field;
  const look = lookOfCells(
    below.slice(0, SAMPLE_ROWS).map((row) => row.cells[column] ?? ''),
    { venues: [], titles: [] },
  );
  return field !== undefined && look !== null && look !== 'text' && (LOOKS_OF[field]?.includes(look) ?? false);
}

/** How many cells are headings with no more words than that. A figure or a VIN in the row means that it holds a lot. */
function namedFields(all: readonly string[]): number {
  const cells = all.slice(0, CELLS_SEARCHED);
  if (cells.some((cell) => /^[$\s]*\d[\d.,\s]*$/.test(cell.slice(0, 40)) || readVin(cell.slice(0, 40)).ok)) return 0;
  return cells.filter((cell) => readHeading(cell)?.exact === true).length;
}

function looksLikeHeadings([first, ...others]: readonly Numbered[]): boolean {
  const words = first?.cells.filter((cell) => !isBlankCell(cell)) ?? [];
  if (words.length < 2 || others.length === 0 || words.some((cell) => /\d/.test(cell) || cell.length > 60))
    return false;
  const below = others.slice(0, 20).flatMap(({ cells }) => cells.filter((cell) => !isBlankCell(cell)));
  return below.filter((cell) => /\d/.test(cell)).length > below.length / 3;
}
