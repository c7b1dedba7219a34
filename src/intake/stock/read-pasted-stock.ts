import type { StockRecordCar } from '../../domain/carrying/stock-record.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { daysBetween } from '../../domain/time/calendar-day.ts';
import { type LocalDate, localTimeSchema } from '../../domain/time/local-date.ts';
import { writtenDate } from '../../domain/time/written-date.ts';
import { sniffDialect } from '../csv/dialect.ts';
import { readRecords } from '../csv/records.ts';
import { isBlankRow } from '../open-table.ts';
import { type StockColumn, stockColumnsOf } from './stock-columns.ts';

export interface PastedStock {
  readonly cars: readonly StockRecordCar[];
  /** Rows that were not taken, each with what to do about it. */
  readonly faults: readonly { readonly line: number; readonly message: string }[];
}

/**
 * Reads the dealer's own cars from a spreadsheet: either the day each came and the day it sold (empty while it has
 * not), or its days and whether it sold. Without headings the first cell is the day it came, or its days; the second the
 * day it sold, or whether it did.
 * @param asOf the day on which unsold cars are as old as the list says
 * @param since the list holds every car that was sold from this day on. A car that came before it was sure not to be
 *   sold by then, or it would not be in the list: its days count from then only.
 */
export function readPastedStock(text: string, asOf: LocalDate, since?: LocalDate): PastedStock {
  const rows: { line: number; cells: readonly string[] }[] = [];
  for (const { firstRow, records } of readRecords(text, sniffDialect(text))) {
    records.forEach((cells, i) => {
      if (!isBlankRow(cells)) rows.push({ line: firstRow + i, cells });
    });
  }
  const { columns, headed } = stockColumnsOf(rows[0]?.cells ?? []);
  const cars: StockRecordCar[] = [];
  const faults: PastedStock['faults'][number][] = [];
  for (const { line, cells } of headed ? rows.slice(1) : rows) {
    const cell = (column: StockColumn) => cells[columns.indexOf(column)]?.trim() ?? '';
    const car = readCar(cell, asOf, since);
    if (car.ok) cars.push(car.value);
    else faults.push({ line, message: car.message });
  }
  return { cars, faults };
}

function readCar(
  cell: (column: StockColumn) => string,
  asOf: LocalDate,
  since: LocalDate | undefined,
): Outcome<StockRecordCar> {
  const came = cell('came');
  const sold = cell('sold');
  const label = cell('label').slice(0, 80);
  const named = label === '' ? {} : { label };
  const plain = /^(\d{1,4})(?: ?d(?:ays?)?)?$/i.exec(came)?.[1];
  if (plain !== undefined) {
    const whether = soldWord(sold);
    if (!whether.ok) return whether;
    if (Number(plain) > 3650) return refuse('days', `${plain} days are more than ten years. Check them.`);
    return ok({ ...named, days: Number(plain), sold: whether.value, enteredAtDays: 0 });
  }
  const arrived = dateOf(came, asOf);
  if (!arrived.ok) return refuse('came', `When it came: ${arrived.message}`);
  const left = sold === '' ? ok(undefined) : dateOf(sold, asOf);
  if (!left.ok) return refuse('sold', `When it sold: ${left.message}`);
  const days = daysBetween(arrived.value, left.value ?? asOf);
  if (days < 0) return refuse('order', 'It sold before it came. Check the two dates.');
  if (days > 3650) return refuse('days', 'It stood for more than ten years. Check the two dates.');
  const early = since === undefined ? 0 : Math.max(0, daysBetween(arrived.value, since));
  if (early > 0 && early >= days) return refuse('before', 'It was gone before the list begins. Remove it.');
  return ok({ ...named, days, sold: left.value !== undefined, enteredAtDays: early });
}

function soldWord(text: string): Outcome<boolean> {
  if (/^(?:yes|y|sold|true|1|x)$/i.test(text)) return ok(true);
  if (/^(?:|no|n|unsold|in stock|stock|here|false|0)$/i.test(text)) return ok(false);
  return refuse('sold', `“${text}” does not say whether it sold. Write yes or no.`);
}

const MIDNIGHT = localTimeSchema.parse('00:00');

function dateOf(text: string, asOf: LocalDate): Outcome<LocalDate> {
  if (text === '') return refuse('empty', 'it is empty. Write a date such as 2026-03-01, or a number of days.');
  if (!/\d{4}|\d[-/.]\d{1,2}[-/.]\d\d/.test(text)) return refuse('no-year', `write “${text}” with its year.`);
  const date = writtenDate(text, MIDNIGHT, { date: asOf, time: MIDNIGHT });
  if (!date.ok) return date;
  return date.value > asOf ? refuse('ahead', `${date.value} is still to come. Check it.`) : date;
}
