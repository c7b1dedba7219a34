import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import { unguardCell } from '../csv/guard-cell.ts';
import type { InvoiceColumn } from './map-invoice.ts';

/** The text of the column with a role, or nothing. */
export function textOf(cells: readonly string[], columns: readonly InvoiceColumn[], role: InvoiceRole): string {
  const column = columns.find((each) => each.role === role);
  const cell = column === undefined ? '' : (cells[column.column] ?? '');
  return isBlankCell(cell) ? '' : unguardCell(cell.trim());
}
