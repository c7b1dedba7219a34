import { beforeEach, expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import { LotRevisions } from '../../src/folds/lot-revisions.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';
import { freshBrowser, openTestStore, value } from '../store/open-test-store.ts';

const LAST = instant(8.64e15);
const close = { instant: LAST, text: '', zone: 'UTC' as never, how: 'picked' as const, doubts: [], otherwise: [] };

let store: Store;
beforeEach(async () => {
  freshBrowser();
  store = await openTestStore();
});

async function entries(): Promise<Entry[]> {
  const [lot] = await store.allLots();
  const items = lot === undefined ? [] : await store.historyOfLot(lot.id);
  return items.flatMap(({ read }) => (read.as === 'known' ? [read.entry] : []));
}

test('time added beyond the last moment there is moves the close no further, and every later entry still counts', async () => {
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Larkspur', close } }]));
  const [id] = lots;
  if (id === undefined) throw new Error('no lot was added');
  value(
    await store.append([
      { subject: subjectOfLot(id), happening: { kind: 'close-extended', from: LAST, minutes: 1440 } },
      {
        subject: subjectOfLot(id),
        happening: { kind: 'lot-changed', set: { miles: 41_000 }, clear: [], evidence: {} },
      },
    ]),
  );
  const lot = await store.lot(id);
  expect(lot?.facts).toMatchObject({ miles: 41_000, close: { instant: LAST } });
  value(await store.rebuildViews());
  expect(await store.lot(id)).toEqual(lot);
  const revisions = new LotRevisions();
  for (const entry of await entries()) revisions.add(entry);
  expect(revisions.of(id).closes).toContain(LAST);
});

test('an entry that can’t be applied costs only itself', async () => {
  value(await store.addLots('typed', [{ facts: { make: 'Larkspur' } }]));
  const [lot] = await store.allLots();
  if (lot === undefined) throw new Error('no lot was added');
  value(await store.changeLot(lot.id, { set: { miles: 41_000 } }));
  value(await store.changeLot(lot.id, { set: { year: 2021 } }));
  const all = await entries();
  const torn = all.map((entry) =>
    entry.happening.kind === 'lot-changed' && entry.happening.set.miles !== undefined
      ? ({ ...entry, happening: { ...entry.happening, clear: null as never } } as Entry)
      : entry,
  );
  const folded = foldLots(torn).get(lot.id);
  expect(folded?.facts).toEqual({ make: 'Larkspur', year: 2021 });
  // What was read from a store has passed its schema; this one never would.
  expect(torn.filter((entry) => readEntry(entry).as === 'known')).toHaveLength(2);
});
