import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { type Outcome, ok } from '../../src/domain/outcome.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { changesTo } from '../../src/folds/fact-changes.ts';
import { closeHabits, orderShown } from '../../src/intake/close-habits.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { decodeText } from '../../src/intake/csv/decode-text.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { CellFault } from '../../src/intake/rows/row-reading.ts';

/** One row of the table. */
export interface LotRow {
  /** As a spreadsheet counts. */
  readonly row: number;
  readonly facts: LotFacts;
  readonly faults: readonly CellFault[];
  /** Why the row can't be priced whatever its facts are: nothing in it says which lot it is. */
  readonly barring: readonly CellFault[];
}

export interface LotTable {
  readonly rows: readonly LotRow[];
  /** Headings of columns that were left out, for the reader to see. */
  readonly unused: readonly string[];
  /** Whether dates that could be read either way were read with the day first, as others of their column show. */
  readonly dayFirst: boolean;
}

/** Reads a table of lots to its end, with the columns taken for what their headings and cells say. */
export async function readRows(bytes: Uint8Array, setup: Setup, now: Instant): Promise<Outcome<LotTable>> {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return decoded;
  const opened = openTable(decoded.value.text);
  if (!opened.ok) return opened;
  const table = opened.value;
  const { venues, titles } = setup;
  const columns = guessColumns(table.headings, table.sample, { venues, titles });
  const pause = () => Promise.resolve();
  const storeZone = setup.store.zone;
  const habits = await closeHabits(table, columns, { now, storeZone, pause });
  const context = {
    now,
    storeZone,
    venues,
    titles,
    from: 'file',
    readClose: readCloseTime,
    closeHabits: habits,
  } as const;
  const rows: LotRow[] = [];
  const rowOfVin = new Map<string, SeenRow>();
  for await (const chunk of readInChunks(table, columns, context, { pause })) {
    for (const { row, facts, faults } of chunk) {
      const barring = faults.filter(({ severity }) => severity === 'row');
      rows.push({ row, facts, faults: [...faults, ...vinAgain(row, facts, rowOfVin)], barring });
    }
  }
  const unused = columns.filter(({ field }) => field === null).map(({ heading }) => heading);
  return ok({ rows, unused, dayFirst: orderShown(habits)?.found === 'day-first' });
}

type SeenRow = Pick<LotRow, 'row' | 'facts'>;

/** The same car twice: one of the two rows is old, or it is in two sales. Both are worked out, and the second says so. */
function vinAgain(row: number, facts: LotFacts, rowOfVin: Map<string, SeenRow>): readonly CellFault[] {
  const { vin } = facts;
  if (vin === undefined) return [];
  const before = rowOfVin.get(vin);
  if (before === undefined) {
    rowOfVin.set(vin, { row, facts });
    return [];
  }
  const differs = changesTo(before.facts, facts).length > 0;
  const message = `The same VIN stands in row ${before.row}, ${differs ? 'with other figures. Keep the row that is right' : 'with nothing else. Leave one out'}.`;
  return [{ column: null, heading: 'VIN', text: vin, message, severity: 'question' }];
}
