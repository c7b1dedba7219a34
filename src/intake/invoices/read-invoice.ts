import { attempt } from '../../domain/attempt.ts';
import type { InvoiceLine } from '../../domain/books/invoice/invoice-line.ts';
import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { readRecords } from '../csv/records.ts';
import { isBlankRow, type Table } from '../open-table.ts';
import { decimalMarkOf, readInvoiceAmount } from './invoice-amount.ts';
import { isDayFirst } from './invoice-day.ts';
import type { InvoiceColumn } from './map-invoice.ts';
import { type InvoiceStyle, readInvoiceRow } from './read-row.ts';
import { checkSums, type InvoiceSum, isSumRow, sumFault } from './sum-rows.ts';

export interface InvoiceFault {
  readonly row: number;
  readonly message: string;
}

/** Everything a file says, and every row that could not be read; the others are not touched by it. */
export interface ReadInvoice {
  readonly lines: readonly InvoiceLine[];
  readonly faults: readonly InvoiceFault[];
  /** Totals, subtotals and balances, held against the rows; those that don't agree are among the faults. */
  readonly sums: readonly InvoiceSum[];
}

interface Row {
  readonly row: number;
  readonly cells: readonly string[];
}

/** @param today for dates that are written without a year */
export function readInvoice(table: Table, columns: readonly InvoiceColumn[], today: LocalDate): ReadInvoice {
  const lines: InvoiceLine[] = [];
  const faults: InvoiceFault[] = [];
  const rows: Row[] = [];
  for (const { firstRow, records, problems } of readRecords(table.text, table.dialect)) {
    records.forEach((cells, i) => {
      const row = firstRow + i;
      if (row < table.firstRow || isBlankRow(cells)) return;
      const quoting = problems.get(row);
      if (quoting !== undefined) faults.push({ row, message: quoting });
      rows.push({ row, cells });
    });
  }
  const sumRows = rows.filter(({ cells }) => isSumRow(cells, columns));
  const billed = rows.filter((row) => !sumRows.includes(row));
  const style = styleOf(billed, columns, today);
  for (const { row, cells } of billed) {
    const read = attempt(() => readInvoiceRow(row, cells, columns, style));
    if (!read.ok) {
      faults.push({ row, message: `This row can’t be read: ${read.short}. The other rows are.` });
      continue;
    }
    lines.push(...read.value.lines);
    faults.push(...read.value.faults.map((message) => ({ row, message })));
  }
  const sums = checkSums(sumRows, lines, columns, style.decimal);
  faults.push(...sums.filter(({ off }) => off !== 0).map((sum) => ({ row: sum.row, message: sumFault(sum) })));
  return { lines, sums, faults: faults.sort((a, b) => a.row - b.row) };
}

function styleOf(rows: readonly Row[], columns: readonly InvoiceColumn[], today: LocalDate): InvoiceStyle {
  const under = (...roles: readonly InvoiceRole[]) => {
    const some = columns.filter(({ role }) => role !== null && roles.includes(role));
    return rows.flatMap(({ cells }) => some.map(({ column, heading }) => ({ cell: cells[column] ?? '', heading })));
  };
  const amounts = under('amount');
  const decimal = decimalMarkOf(amounts.map(({ cell }) => cell));
  const isBelow = ({ cell, heading }: (typeof amounts)[number]) => {
    const read = readInvoiceAmount(cell, heading, decimal);
    return read.ok && read.value < 0;
  };
  return {
    today,
    dayFirst: isDayFirst(under('date').map(({ cell }) => cell)),
    decimal,
    signed: columns.some(({ role }) => role === 'credit' || role === 'payment') || amounts.some(isBelow),
  };
}
