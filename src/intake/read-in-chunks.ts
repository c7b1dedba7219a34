import { attempt, type CantWorkOut } from '../domain/attempt.ts';
import { closeHabits } from './close-habits.ts';
import { readRecords } from './csv/records.ts';
import { isBlankRow, type Table } from './open-table.ts';
import { type Pause, pauseForPage } from './pause.ts';
import type { ReadContext } from './rows/read-context.ts';
import { type ColumnChoice, rowReader } from './rows/read-row.ts';
import type { RowReading } from './rows/row-reading.ts';
import { shorten } from './rows/shorten.ts';

export interface ChunkOptions {
  /** How many rows are read before the page gets its turn. */
  readonly rowsAtOnce?: number;
  readonly pause?: Pause;
  /** Ends the reading before its end; what was read so far has been handed over. */
  readonly signal?: AbortSignal;
}

/** Some milliseconds of work on a slow machine. */
const ROWS_AT_ONCE = 250;

/**
 * Reads every row of a table, some at a time, and lets the page draw in between, so that 50,000 rows never freeze it.
 * Blank rows are passed over.
 */
export async function* readInChunks(
  table: Table,
  columns: readonly ColumnChoice[],
  context: ReadContext,
  { rowsAtOnce = ROWS_AT_ONCE, pause = pauseForPage, signal }: ChunkOptions = {},
): AsyncGenerator<readonly RowReading[]> {
  const habits = context.closeHabits ?? (await closeHabits(table, columns, { ...context, pause }));
  const read = rowReader(columns, { ...context, closeHabits: habits, usualCells: usualCells(table.sample) });
  let chunk: RowReading[] = [];
  for (const { firstRow, records, problems } of readRecords(table.text, table.dialect)) {
    for (const [i, cells] of records.entries()) {
      const row = firstRow + i;
      if (row < table.firstRow || isBlankRow(cells)) continue;
      const reading = attempt(() => read(cells, row, problems.get(row)));
      chunk.push(reading.ok ? reading.value : unread(row, cells, reading));
      if (chunk.length < rowsAtOnce) continue;
      yield chunk;
      chunk = [];
      await pause();
      if (signal?.aborted) return;
    }
  }
  if (chunk.length > 0) yield chunk;
}

/** The number of cells that most rows have; undefined where no number is that common, as in a table of one row. */
function usualCells(rows: readonly (readonly string[])[]): number | undefined {
  if (rows.length < 2) return undefined;
  const lengths = rows.map(({ length }) => length).sort((a, b) => a - b);
  const middle = lengths[Math.floor((lengths.length - 1) / 2)];
  return lengths.filter((length) => length === middle).length * 2 >= lengths.length ? middle : undefined;
}

/** A row that can't be read by a mistake of ours costs only itself. */
function unread(row: number, cells: readonly string[], { short }: CantWorkOut): RowReading {
  const message = `This row can’t be read: ${short}. Add its lot by hand; the other rows are taken.`;
  const fault = { column: null, heading: '', text: shorten(cells.join(' | '), 200), message, severity: 'row' } as const;
  return { row, facts: {}, evidence: {}, faults: [fault], usable: false };
}
