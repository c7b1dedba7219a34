import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { Table } from '../open-table.ts';

/** An invoice is read and drawn as a whole, each of its rows beside the folder that it belongs to. */
const MOST_COLUMNS = 200;
const LONGEST_TEXT = 5_000_000;

/** A table as an invoice, unless it is one of a size that no invoice has. */
export function openInvoice(table: Outcome<Table>): Outcome<Table> {
  if (!table.ok) return table;
  const { headings, sample, text } = table.value;
  const columns = Math.max(headings?.length ?? 0, ...sample.map((row) => row.length));
  if (columns > MOST_COLUMNS) {
    const message = `This has ${columns.toLocaleString('en-US')} columns. An invoice has no more than ${MOST_COLUMNS}: leave out those that are not needed.`;
    return refuse('too-wide', message);
  }
  if (text.length > LONGEST_TEXT) {
    return refuse('too-large', 'This is longer than 5 million characters. Split the invoice, by month for instance.');
  }
  return ok(table.value);
}
