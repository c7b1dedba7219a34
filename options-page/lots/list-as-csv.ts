import { bidWords } from '../../src/domain/bid/bid-words.ts';
import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { type ExtraColumn, lotsToCsv } from '../../src/intake/lots-to-csv.ts';
import { pauseForPage } from '../../src/intake/pause.ts';
import type { LotCell } from '../../src/intake/rows/lot-cells.ts';
import type { LotWorks } from '../../src/views/lots/standing.ts';
import { COLUMNS, type FileLot, PLANNED } from './columns.tsx';

/** Work between two turns of the page. */
const SLICE_MS = 12;

interface ListToSave {
  readonly lots: readonly LotState[];
  readonly setup: Setup;
  readonly works: LotWorks;
  readonly now: Instant;
  /** Whether there is a plan, whose bids are then in a column of their own. */
  readonly withPlan?: boolean;
}

/**
 * The lots as a CSV file that reads back as the same lots, with the figures the list shows in columns that are left out
 * then. The page keeps its turn meanwhile: a max bid takes a millisecond or two.
 */
export async function listAsCsv(
  { lots, setup, works, now, withPlan = false }: ListToSave,
  onProgress: (written: number) => void,
): Promise<Blob> {
  const byFacts = new Map(lots.map((lot) => [lot.facts, lot]));
  const cell = (facts: LotState['facts'], value: (lot: FileLot) => string | number | null | undefined) => {
    const lot = byFacts.get(facts);
    return lot && csvCell(value({ standing: works.of(lot), bid: bidWords(works.bids.at(lot, now)) }));
  };
  // Without a plan the file is as it was.
  const columns = withPlan ? COLUMNS.flatMap((one) => (one.key === 'max-bid' ? [one, PLANNED] : [one])) : COLUMNS;
  const extra: ExtraColumn[] = [
    ...columns.flatMap(({ file }) =>
      file === null
        ? []
        : { heading: file.heading, cell: ({ facts }: Pick<LotState, 'facts'>) => cell(facts, file.of) },
    ),
    { heading: 'Missing', cell: ({ facts }) => cell(facts, ({ standing }) => standing.missing.join('; ')) },
  ];
  const { venues, titles } = setup;
  const context = { now, storeZone: setup.store.zone, venues, titles, readClose: readCloseTime };
  const parts: string[] = [];
  let until = performance.now() + SLICE_MS;
  for (const part of lotsToCsv(lots, context, extra)) {
    parts.push(part);
    if (performance.now() < until) continue;
    onProgress(parts.length - 1);
    await pauseForPage();
    until = performance.now() + SLICE_MS;
  }
  return new Blob(parts, { type: 'text/csv' });
}

/** Cents as dollars; nothing for what is empty. */
function csvCell(value: string | number | null | undefined): LotCell | undefined {
  if (value === null || value === undefined || value === '') return undefined;
  return typeof value === 'number' ? { text: String(value / 100), kind: 'number' } : { text: value, kind: 'text' };
}
