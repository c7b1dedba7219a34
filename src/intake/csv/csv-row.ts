import { guardCell } from './guard-cell.ts';

export interface CsvCell {
  readonly text: string;
  /** A date is written year first, and every spreadsheet takes it for the same day. */
  readonly kind: 'text' | 'number' | 'date';
}

/** One record of RFC 4180 with its CRLF. Text is guarded against formulas; numbers and dates are written as they are. */
export function csvRow(cells: readonly (CsvCell | undefined)[]): string {
  return `${cells.map((cell) => (cell === undefined ? '' : written(cell))).join(',')}\r\n`;
}

/** Quotes also around semicolons and tabs: a spreadsheet of another country splits at those. */
function written({ text, kind }: CsvCell): string {
  const safe = kind === 'text' ? guardCell(text) : text;
  return /[",;\t\r\n|]|^\s|\s$|^'/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
