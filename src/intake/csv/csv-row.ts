import { guardCell } from './guard-cell.ts';

export interface CsvCell {
  readonly text: string;
  readonly kind: 'text' | 'number';
}

/** One record of RFC 4180 with its CRLF. Text is guarded against formulas; numbers are written as they are. */
export function csvRow(cells: readonly (CsvCell | undefined)[]): string {
  return `${cells.map((cell) => (cell === undefined ? '' : written(cell))).join(',')}\r\n`;
}

/** Quotes also around semicolons and tabs: a spreadsheet of another country splits at those. */
function written({ text, kind }: CsvCell): string {
  const safe = kind === 'number' ? text : guardCell(text);
  return /[",;\t\r\n|]|^\s|\s$|^'/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
