import { csvRow } from '../csv/csv-row.ts';
import type { OutColumn } from './books-columns.ts';

/**
 * Rows as a CSV file (RFC 4180, with a byte-order mark so that spreadsheets take it for UTF-8): headings first, text
 * guarded against being run or changed, amounts as plain numbers with two decimals, days as year-month-day.
 */
export function booksToCsv<Row>(columns: readonly OutColumn<Row>[], rows: Iterable<Row>): string {
  const lines = [csvRow(columns.map(({ heading }) => ({ text: heading, kind: 'text' })))];
  for (const row of rows) lines.push(csvRow(columns.map(({ cell }) => cell(row))));
  return `\ufeff${lines.join('')}`;
}
