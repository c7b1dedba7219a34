import type { ParseError, ParseResult } from 'papaparse';
import type { Dialect } from './dialect.ts';
import { splitCells } from './split-cells.ts';

/** Some rows of a file, in their order. */
export interface RecordSlice {
  /** Row number of the first of them, counted as a spreadsheet does: from 1, blank rows included. */
  readonly firstRow: number;
  readonly records: readonly (readonly string[])[];
  /** Rows whose quote marks do not work out, with a sentence about each. */
  readonly problems: ReadonlyMap<number, string>;
}

/** How many characters are taken at once: some thousand rows, read in a few milliseconds. */
const SLICE = 1 << 17;
/** After a bad quote mark the slices start small again, about two rows, so that a file full of them is not read over and over. */
const SMALL_SLICE = 1 << 8;
/** After so many quote marks that are never closed, quote marks mean nothing in this file. */
const GIVE_UP_ON_QUOTES = 8;
/** Nor after the whole file was read again so often: it can be made so that each row runs on to its end. */
const READ_AGAIN = 8;

const NOT_CLOSED =
  'A quote mark in this row is not closed properly, so the row was read as plain text. Check its cells.';
const MALFORMED = 'A quote mark inside a cell of this row is not written twice. Check its cells.';

/**
 * Splits text into rows and cells, some rows at a time, so that the caller can pause in between. Every character ends up
 * in some cell: a quote mark that is not closed costs its own row its quoting, and does not swallow the rows after it.
 */
export function* readRecords(text: string, dialect: Dialect): Generator<RecordSlice> {
  let [at, row, unclosed, again, size] = [dialect.start, 1, 0, 0, SLICE];
  while (at < text.length) {
    const atEnd = at + size >= text.length;
    const piece = text.slice(at, at + size);
    const quoted = unclosed < GIVE_UP_ON_QUOTES && again <= READ_AGAIN * text.length;
    const result = splitCells(piece, { ...dialect, quoted, leaveLast: !atEnd });
    const bad = firstRunaway(result);
    const records = result.data.slice(0, bad?.row);
    if (records.length > 0) yield sliceOf(records, row, result.errors, dialect);
    row += records.length;
    if (bad !== undefined) {
      if (bad.neverClosed) unclosed++;
      again += piece.length;
      const start = at + lengthOfRows(piece, dialect, records.length);
      const end = endOfLine(text, start, dialect);
      yield plainRow(text.slice(start, end), row, dialect);
      row++;
      at = end + dialect.newline.length;
      size = Math.max(SMALL_SLICE, 2 * (end - start));
    } else {
      at = atEnd ? text.length : at + result.meta.cursor;
      // A row longer than the slice: doubling reads even one of 20 MB a handful of times, not a hundred.
      if (records.length === 0 || size < SLICE) size *= 2;
      else size = SLICE;
    }
  }
}

/** The first row that a quote mark made run on over the rows after it. */
function firstRunaway({ data, errors }: ParseResult<string[]>): { row: number; neverClosed: boolean } | undefined {
  const error = errors.find(
    ({ code, row = -1 }) => code === 'MissingQuotes' || (code === 'InvalidQuotes' && spansLines(data[row])),
  );
  if (error?.row === undefined) return undefined;
  const neverClosed = errors.some(({ code, row }) => code === 'MissingQuotes' && row === error.row);
  return { row: error.row, neverClosed };
}

const spansLines = (cells: readonly string[] | undefined): boolean =>
  cells?.some((cell) => cell.includes('\n') || cell.includes('\r')) ?? false;

function plainRow(line: string, row: number, dialect: Dialect): RecordSlice {
  const { data } = splitCells(line, { ...dialect, quoted: false });
  return { ...sliceOf(data, row, [], dialect), problems: new Map([[row, NOT_CLOSED]]) };
}

/** How long the first rows of a piece are: the parser does not say, so they are parsed once more. */
function lengthOfRows(piece: string, dialect: Dialect, count: number): number {
  return count === 0 ? 0 : splitCells(piece, { ...dialect, most: count }).meta.cursor;
}

function endOfLine(text: string, from: number, dialect: Dialect): number {
  const end = text.indexOf(dialect.newline, from);
  return end < 0 ? text.length : end;
}

function sliceOf(
  records: readonly string[][],
  firstRow: number,
  errors: readonly ParseError[],
  dialect: Dialect,
): RecordSlice {
  if (dialect.newline === '\n') records.forEach(dropReturn);
  const problems = new Map<number, string>();
  for (const error of errors) {
    if (error.code === 'InvalidQuotes' && error.row !== undefined && error.row < records.length) {
      problems.set(firstRow + error.row, MALFORMED);
    }
  }
  return { firstRow, records, problems };
}

/** Lines end with LF or CRLF, or now one and now the other; the CR is no part of the last cell. */
function dropReturn(cells: string[]): void {
  const last = cells.length - 1;
  const cell = cells[last];
  if (cell?.endsWith('\r')) cells[last] = cell.slice(0, -1);
}
