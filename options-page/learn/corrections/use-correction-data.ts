import { useMemo } from 'preact/hooks';
import type { OpenLot } from '../../../src/domain/learn/corrections/effect.ts';
import { type CorrectionEvidence, gatherEvidence } from '../../../src/domain/learn/corrections/evidence.ts';
import { type Finding, findingOf } from '../../../src/domain/learn/corrections/finding.ts';
import type { TimedLot } from '../../../src/domain/learn/corrections/win-outcomes.ts';
import type { PastLot } from '../../../src/domain/learn/happened.ts';
import { lotTitle } from '../../../src/domain/lot/car-name.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { isOver } from '../../../src/folds/bid-given.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Store } from '../../../src/store/store.ts';
import type { StoreChange } from '../../../src/store/write/touched.ts';
import { useFromStore } from '../../../src/ui/hooks/use-from-store.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { beliefsAtClose } from '../../../src/views/learn/beliefs-at-close.ts';
import { timedLots } from '../../../src/views/learn/corrections/timed-lots.ts';
import { contextsThen, pastLots } from '../../../src/views/learn/past-lots.ts';
import { type Sliced, useSlices } from './use-slices.ts';

/** What corrections are learned from, and the lots that they would move. */
export interface CorrectionData {
  readonly timed: readonly TimedLot[];
  readonly evidence: CorrectionEvidence;
  readonly open: readonly OpenLot[];
  readonly now: Instant;
}

const read = async (store: Store) => {
  const lots = await store.allLots();
  const ended = lots.filter((lot) => lot.sale?.result !== undefined);
  const [books, entries] = await Promise.all([store.books(), store.entriesOf(ended.map(({ id }) => id))]);
  return { lots, ended, books, entries, now: instant(Date.now()) };
};
type Read = Awaited<ReturnType<typeof read>>;

const concerns = ({ books, lots }: StoreChange): boolean => books || lots === 'many' || lots.length > 0;

/** Lots worked out between two looks at the clock. */
const PIECE = 4;

/** Reads past lots and gathers the evidence, a few lots at a time. */
export function useCorrectionData(): Sliced<CorrectionData> {
  const { setup } = useWorkspace();
  const { zone } = setup.store;
  const found = useFromStore(read, concerns);
  // The zone names days; nothing else of the present setup is looked at here.
  const begin = useMemo(() => (found === null ? null : () => gather(found, setup)), [found, zone]);
  return useSlices(begin);
}

function* gather({ lots, ended, books, entries, now }: Read, setup: Setup): Generator<number, CorrectionData> {
  const { zone } = setup.store;
  const today = dateIn(zone, now);
  const beliefs = beliefsAtClose(entries);
  const contextOf = contextsThen(zone);
  const past: PastLot[] = [];
  for (let i = 0; i < ended.length; i += PIECE) {
    yield i;
    const some = ended.slice(i, i + PIECE);
    const { folders } = foldersOf(some, books, new Map(), setup, today);
    past.push(...pastLots(some, beliefs, folders, contextOf, today).past);
  }
  const timed = timedLots(past, ended, books, zone);
  const open = lots.filter((lot) => !lot.dropped && !isOver(lot, now));
  const comps = open.map((lot) => ({ at: lot.changedAt, comps: lot.facts.comps ?? [] }));
  const evidence = yield* gatherEvidence(timed, comps, now);
  return { timed, evidence, now, open: open.map(openLot) };
}

const openLot = ({ id, facts }: LotState): OpenLot => ({ lot: id, title: lotTitle(facts), facts });

/** What the evidence says for each of these, one after the other. */
export function* findingsOf(
  ids: readonly Finding['id'][],
  { evidence, now }: CorrectionData,
  setup: Setup,
): Generator<number, readonly Finding[]> {
  const found: Finding[] = [];
  for (const [done, id] of ids.entries()) {
    yield done;
    found.push(findingOf(id, { evidence, setup, now }));
  }
  return found;
}
