import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { SECOND } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { closeHabits } from '../../src/intake/close-habits.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { openTable } from '../../src/intake/open-table.ts';
import type { ReadContext } from '../../src/intake/rows/read-context.ts';
import { rowReader } from '../../src/intake/rows/read-row.ts';
import { value } from '../store/open-test-store.ts';

/** One column of a file, and what a careful person reads in it; written by somebody who had not read the code. */
interface CloseColumn {
  readonly id: string;
  readonly heading: string;
  readonly cells: readonly string[];
  readonly now: string;
  readonly venueZone: string | null;
  readonly storeZone: string;
  readonly expect: {
    readonly order: 'day-first' | 'month-first' | 'year-first' | 'ask' | 'none';
    /** Null where the cell is asked, or holds no close. */
    readonly instants: readonly (string | null)[];
    /** Where a careful person may also ask. */
    readonly orNull?: readonly number[];
    readonly toleranceSeconds?: number;
  };
  readonly why: string;
}

const COLUMNS: readonly CloseColumn[] = JSON.parse(
  readFileSync(new URL('../fixtures/close-columns.json', import.meta.url), 'utf8'),
);

const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

/** The order that was found, and of each cell the moment that is told as a fact. */
async function read({ heading, cells, now, venueZone, storeZone }: CloseColumn) {
  const headings = ['Lot number', 'Venue', heading];
  const rows = cells.map((cell, i) => [String(100 + i), 'Here', cell]);
  const table = value(openTable([headings, ...rows].map((row) => row.map(quoted).join(',')).join('\n')));
  const venues = venueZone === null ? [] : [{ id: 'here', name: 'Here', zone: zone(venueZone) }];
  const columns = guessColumns(headings, rows, { venues, titles: [] });
  const bare = { now: instant(Date.parse(now)), storeZone: zone(storeZone), venues, titles: [] };
  const habits = await closeHabits(table, columns, bare);
  const context: ReadContext = { ...bare, from: 'file', readClose: readCloseTime, closeHabits: habits };
  const reader = rowReader(columns, context);
  const field = columns[2]?.field;
  return {
    order: (field === null || field === undefined ? undefined : habits[field]?.found) ?? 'none',
    told: rows.map((row, i) => {
      const { close } = reader(row, i + 2).facts;
      return close === undefined || close.doubts.length > 0 ? null : close.instant;
    }),
  };
}

test.each(COLUMNS)('$id under “$heading”: $why', async (column) => {
  const { order, told } = await read(column);
  expect(order).toBe(column.expect.order);
  const { instants, orNull = [], toleranceSeconds = 0 } = column.expect;
  for (const [i, wanted] of instants.entries()) {
    const at = told[i] ?? null;
    if (at === null && orNull.includes(i)) continue;
    if (wanted === null || at === null) expect(at, column.cells[i]).toBe(wanted);
    else expect(Math.abs(at - Date.parse(wanted)), column.cells[i]).toBeLessThanOrEqual(toleranceSeconds * SECOND);
  }
});
