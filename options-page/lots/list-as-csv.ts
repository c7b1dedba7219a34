import { bidWords } from '../../src/domain/bid/bid-words.ts';
import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { type ExtraColumn, lotsToCsv } from '../../src/intake/lots-to-csv.ts';
import { pauseForPage } from '../../src/intake/pause.ts';
import type { LotWorks } from '../../src/views/lots/standing.ts';

/** Work between two turns of the page. */
const SLICE_MS = 12;

interface ListToSave {
  readonly lots: readonly LotState[];
  readonly setup: Setup;
  readonly works: LotWorks;
  readonly now: Instant;
}

/**
 * The lots as a CSV file that reads back as the same lots, with the figures the list shows in columns that are left out
 * then. The page keeps its turn meanwhile: a max bid takes a millisecond or two.
 */
export async function listAsCsv(
  { lots, setup, works, now }: ListToSave,
  onProgress: (written: number) => void,
): Promise<Blob> {
  const byFacts = new Map(lots.map((lot) => [lot.facts, lot]));
  const standing = (facts: LotState['facts']) => {
    const lot = byFacts.get(facts);
    return lot === undefined ? undefined : works.of(lot);
  };
  const bid = (facts: LotState['facts']) => {
    const lot = byFacts.get(facts);
    return lot === undefined ? undefined : ({ text: bidWords(works.bids.at(lot, now)), kind: 'text' } as const);
  };
  const money = (amount: number | null | undefined) =>
    amount === null || amount === undefined ? undefined : ({ text: String(amount / 100), kind: 'number' } as const);
  const extra: ExtraColumn[] = [
    { heading: 'Max bid', cell: ({ facts }) => money(standing(facts)?.maxBid) },
    { heading: 'Bid state', cell: ({ facts }) => bid(facts) },
    { heading: 'Headroom', cell: ({ facts }) => money(standing(facts)?.headroom) },
    {
      heading: 'Missing',
      cell: ({ facts }) => {
        const missing = standing(facts)?.missing ?? [];
        return missing.length === 0 ? undefined : { text: missing.join('; '), kind: 'text' };
      },
    },
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
