import type { Instant } from '../domain/time/instant.ts';
import { changesTo } from '../folds/fact-changes.ts';
import type { LotState } from '../folds/lot-state.ts';
import { isSameSale } from '../folds/same-sale.ts';
import type { RowReading } from './rows/row-reading.ts';
import { type SeenAgain, seenOnWatchlist } from './seen-again.ts';

/** What becomes of a row: `update` only where the lot has been seen. */
export type RowAction = 'add' | 'update' | 'skip';

export interface PlannedRow {
  readonly reading: RowReading;
  readonly seen: SeenAgain | null;
  /** What is done unless the user chooses otherwise. */
  readonly action: RowAction;
}

export interface ImportPlan {
  /** In the order of the file, rows that can't be taken included. */
  readonly rows: readonly PlannedRow[];
  readonly counts: PlanCounts;
}

export interface PlanCounts {
  readonly rows: number;
  readonly add: number;
  readonly update: number;
  readonly skip: number;
  /** Rows that do not say which lot they are. */
  readonly unusable: number;
  /** Rows that add up those above them. */
  readonly totals: number;
  /** Rows that name the very lot of an earlier row of the file. */
  readonly repeated: number;
  /** Rows that name the car of an earlier row of the file, in another sale. */
  readonly again: number;
  /** Rows that name a car seen before, on the watchlist or further up. */
  readonly seen: number;
  /** Rows with a cell that could not be read, or with a question. */
  readonly withFaults: number;
  /** Lots to be added that have closed already. */
  readonly closed: number;
}

export interface KnownLots {
  readonly now: Instant;
  /** Lots of the watchlist with this VIN, dropped ones included. */
  readonly existing: (vin: string) => readonly LotState[];
}

/** Reads a file to its end and says what taking it would do. Nothing is changed by it. */
export async function importPlan(
  chunks: AsyncIterable<readonly RowReading[]>,
  known: KnownLots,
  onProgress: (rows: number) => void = () => undefined,
): Promise<ImportPlan> {
  const plan = rowPlanner(known);
  const rows: PlannedRow[] = [];
  for await (const chunk of chunks) {
    for (const reading of chunk) rows.push(plan(reading));
    onProgress(rows.length);
  }
  return { rows, counts: countPlan(rows, known.now) };
}

/** No car is in more sales at once; a file that says so must not take forever. */
const MOST_SALES = 50;

/** Plans rows one after the other, remembering those before. */
export function rowPlanner({ now, existing }: KnownLots): (reading: RowReading) => PlannedRow {
  const inFile = new Map<string, RowReading[]>();
  return (reading) => {
    if (!reading.usable) return { reading, seen: null, action: 'skip' };
    const { vin } = reading.facts;
    if (vin === undefined) return { reading, seen: null, action: 'add' };
    const before = inFile.get(vin) ?? [];
    const first = before.find(({ facts }) => isSameSale(facts, reading.facts, now));
    if (first !== undefined) {
      const seen = { kind: 'in-file', row: first.row, changes: changesTo(first.facts, reading.facts) } as const;
      return { reading, seen, action: defaultAction(seen) };
    }
    if (before.length < MOST_SALES) inFile.set(vin, [...before, reading]);
    const watched = seenOnWatchlist(reading.facts, existing(vin), now);
    const [earlier] = before;
    const again = earlier && ({ kind: 'in-file-again', row: earlier.row } as const);
    // What it changes on the list matters more than that the file has the car twice.
    const seen = watched?.kind === 'watched' ? watched : (again ?? watched);
    return { reading, seen, action: defaultAction(seen) };
  };
}

/** A dropped lot is not brought back unasked, and an update that changes nothing is none. */
function defaultAction(seen: SeenAgain | null): RowAction {
  if (seen === null || seen.kind === 'another-sale' || seen.kind === 'in-file-again') return 'add';
  if (seen.kind === 'watched' && seen.dropped) return 'skip';
  return seen.changes.some(({ taken }) => taken) ? 'update' : 'skip';
}

/** The figures of a plan; to be counted anew when the user has chosen other actions. */
export function countPlan(rows: readonly PlannedRow[], now: Instant): PlanCounts {
  const count = (is: (row: PlannedRow) => boolean) => rows.filter(is).length;
  return {
    rows: rows.length,
    add: count((row) => row.action === 'add'),
    update: count((row) => row.action === 'update'),
    skip: count((row) => row.action === 'skip' && row.reading.usable),
    unusable: count(({ reading }) => !reading.usable && reading.totals !== true),
    totals: count(({ reading }) => reading.totals === true),
    repeated: count(({ seen }) => seen?.kind === 'in-file'),
    again: count(({ seen }) => seen?.kind === 'in-file-again'),
    seen: count((row) => row.seen !== null),
    withFaults: count((row) => row.reading.faults.length > 0),
    closed: count((row) => row.action === 'add' && (row.reading.facts.close?.instant ?? now) < now),
  };
}
