import { attempt } from '../../domain/attempt.ts';
import type { SoldRow } from '../../domain/books/sold/match-sold.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { findVins } from '../../domain/vin/find-vins.ts';
import { tidyVin } from '../../domain/vin/read-vin.ts';
import { readRecords } from '../csv/records.ts';
import { decimalMarkOf, readInvoiceAmount } from '../invoices/invoice-amount.ts';
import { isDayFirst, readInvoiceDay } from '../invoices/invoice-day.ts';
import { isBlankRow, type Table } from '../open-table.ts';
import { type SoldColumn, soldColumnsOf } from './sold-columns.ts';

/** What a list of sold cars says, and every row that could not be read, with what to do about it. */
export interface ReadSold {
  readonly rows: readonly SoldRow[];
  readonly faults: readonly { readonly row: number; readonly message: string }[];
}

/**
 * Reads a list of sold cars: VIN, sale date and price, in columns that their headings name, and to whom where that stands there.
 * One bad row costs only itself.
 * @returns a refusal where a column that is needed has no heading
 */
export function readSold(table: Table, today: LocalDate): Outcome<ReadSold> {
  const columns = soldColumnsOf(table.headings ?? []);
  const missing = (['vin', 'date', 'price'] as const).filter((column) => columns[column] === undefined);
  if (missing.length > 0) {
    const names = missing.map((column) => NAMES[column]).join(' and ');
    return refuse(
      'no-column',
      `No heading names ${names}. The first row must have the headings VIN, Sold date and Price.`,
    );
  }
  const rows: SoldRow[] = [];
  const faults: { row: number; message: string }[] = [];
  const all: { row: number; cells: readonly string[] }[] = [];
  for (const { firstRow, records, problems } of readRecords(table.text, table.dialect)) {
    records.forEach((cells, i) => {
      const row = firstRow + i;
      if (row < table.firstRow || isBlankRow(cells)) return;
      const quoting = problems.get(row);
      if (quoting !== undefined) faults.push({ row, message: quoting });
      all.push({ row, cells });
    });
  }
  const under = (column: SoldColumn) => all.map(({ cells }) => cells[columns[column] ?? -1] ?? '');
  const style: Style = {
    today,
    dayFirst: isDayFirst(under('date')),
    decimal: decimalMarkOf(under('price')),
    heading: table.headings?.[columns.price ?? -1] ?? '',
  };
  for (const { row, cells } of all) {
    const cell = (column: SoldColumn) => (cells[columns[column] ?? -1] ?? '').trim();
    const read = attempt(() => readRow(row, cell, style));
    if (!read.ok) faults.push({ row, message: `This row can’t be read: ${read.short}. The other rows are.` });
    else if (read.value.ok) rows.push(read.value.value);
    else faults.push({ row, message: read.value.message });
  }
  return ok({ rows, faults: faults.sort((a, b) => a.row - b.row) });
}

const NAMES = { vin: 'the VIN', date: 'the sale date', price: 'the price' } as const;

interface Style {
  readonly today: LocalDate;
  readonly dayFirst: boolean;
  readonly decimal: DecimalMark | undefined;
  readonly heading: string;
}

function readRow(row: number, cell: (column: SoldColumn) => string, style: Style): Outcome<SoldRow> {
  const written = cell('vin');
  const [vin = tidyVin(written)] = findVins(written);
  if (vin === '') return refuse('no-vin', 'There is no VIN, so the car is not known. Add it.');
  if (cell('date') === '')
    return refuse('no-date', 'There is no sale date. Leave out cars that are not sold, or add it.');
  const day = readInvoiceDay(cell('date'), style.today, style.dayFirst);
  if (!day.ok) return day;
  const { date } = day.value;
  if (date === undefined) return refuse('no-date', `“${cell('date')}” is no date. Write one such as 2026-03-01.`);
  if (date > style.today) return refuse('ahead', `${date} is still to come. Check the date.`);
  if (cell('price') === '') return refuse('no-price', 'There is no price. Add it.');
  const price = readInvoiceAmount(cell('price'), style.heading, style.decimal);
  if (!price.ok) return price;
  if (price.value <= 0) return refuse('no-price', 'A price of $0 or less is no sale. Check it.');
  return ok({ row, vin: vin.slice(0, 40), date, price: price.value, buyer: buyerOf(cell('buyer')) });
}

/** To a customer, unless the row says otherwise. */
function buyerOf(words: string): SoldRow['buyer'] {
  if (/wholesale|dealer|auction|\bwhsl?\b/i.test(words)) return 'wholesale';
  return /business|fleet|commercial|compan/i.test(words) ? 'business' : 'retail';
}
