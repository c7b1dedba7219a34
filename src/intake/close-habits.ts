import { type FoundHabits, HabitsOfColumn } from '../domain/close/column-habits.ts';
import type { DateOrder } from '../domain/close/date-order.ts';
import type { Instant } from '../domain/time/instant.ts';
import { wallClock } from '../domain/time/wall-clock.ts';
import type { Zone } from '../domain/time/zone.ts';
import type { ColumnFieldId } from './columns/column-fields.ts';
import { unguardCell } from './csv/guard-cell.ts';
import { readRecords } from './csv/records.ts';
import type { Table } from './open-table.ts';
import { type Pause, pauseForPage } from './pause.ts';
import type { ColumnChoice } from './rows/read-row.ts';
import { serialToText } from './rows/spreadsheet-serial.ts';

/** The columns that say when a lot closes, each with a way of writing of its own. */
const CLOSE_FIELDS: readonly ColumnFieldId[] = ['closes', 'closeDate', 'closeTime', 'timeLeft'];

/** How each column of closes writes, by what it holds. */
export type CloseHabits = Readonly<Partial<Record<ColumnFieldId, FoundHabits>>>;

interface HabitsOptions {
  readonly now: Instant;
  readonly storeZone: Zone;
  /** What is done between two parts of the file. */
  readonly pause?: Pause;
}

/** Looks at every cell of the columns that say when a lot closes: the last row of a file may be the one that decides. */
export async function closeHabits(
  table: Table,
  columns: readonly ColumnChoice[],
  { now, storeZone, pause = pauseForPage }: HabitsOptions,
): Promise<CloseHabits> {
  const closing = columns.filter(({ field }) => field !== null && CLOSE_FIELDS.includes(field));
  if (closing.length === 0) return {};
  const looked = closing.map((choice) => ({ ...choice, cells: new HabitsOfColumn(wallClock(now, storeZone).date) }));
  for (const { firstRow, records } of readRecords(table.text, table.dialect)) {
    for (const [i, record] of records.entries()) {
      if (firstRow + i < table.firstRow) continue;
      for (const { column, cells } of looked) {
        const cell = unguardCell(record[column] ?? '').trim();
        // A day number was written by a spreadsheet and says nothing of how people write here.
        if (serialToText(cell) === cell) cells.look(cell);
      }
    }
    await pause();
  }
  return Object.fromEntries(looked.map(({ field, heading, cells }) => [field, cells.habits(heading)]));
}

/** The same habits with the order of day and month that the user has chosen, if he has. */
export function withOrder(habits: CloseHabits, order: DateOrder | undefined): CloseHabits {
  if (order === undefined) return habits;
  return Object.fromEntries(Object.entries(habits).map(([field, found]) => [field, { ...found, order }]));
}

/** What the columns show of the order of day and month; null where no date in figures leaves it open. */
export function orderShown(habits: CloseHabits): FoundHabits | null {
  const found = [habits.closes, habits.closeDate].filter((one) => one !== undefined);
  return (
    found.find((one) => one.found === 'ask') ?? found.find((one) => /^(?:day|month)-first$/.test(one.found)) ?? null
  );
}
