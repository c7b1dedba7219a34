import fc from 'fast-check';
import { expect } from 'vitest';
import type { LotFacts, LotId } from '../../src/domain/lot/lot.ts';
import { storeSchema } from '../../src/domain/setup/store.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import { readBackup } from '../../src/store/backup/read-backup.ts';
import type { Store } from '../../src/store/store.ts';
import { at, someFacts } from '../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testRandom, value } from './open-test-store.ts';
import { storedEntries } from './raw-database.ts';

/** What a user may do to a store. */
type Act =
  | { do: 'add'; lots: LotFacts[] }
  | { do: 'change'; lot: number; set: LotFacts }
  | { do: 'drop'; lot: number }
  | { do: 'setup'; name: string }
  | { do: 'shown'; keys: string[] }
  | { do: 'undo'; entries: number[] }
  | { do: 'merge' };

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.record({ do: fc.constant('add' as const), lots: fc.array(someFacts, { minLength: 1, maxLength: 3 }) }),
  fc.record({ do: fc.constant('change' as const), lot: fc.nat(), set: someFacts }),
  fc.record({ do: fc.constant('drop' as const), lot: fc.nat() }),
  fc.record({ do: fc.constant('setup' as const), name: fc.string({ maxLength: 4 }) }),
  fc.record({ do: fc.constant('shown' as const), keys: fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 1 }) }),
  fc.record({ do: fc.constant('undo' as const), entries: fc.array(fc.nat(), { minLength: 1, maxLength: 2 }) }),
  fc.record({ do: fc.constant('merge' as const) }),
);

/** What three stores are told, one thing after the other: which of them, and what. */
export const stepsFor = (most: number) => fc.array(fc.tuple(fc.nat(2), act), { minLength: 5, maxLength: most });

/** Two tabs of one browser, and another browser; none has anything yet. */
export async function threeStores(): Promise<readonly Store[]> {
  freshBrowser();
  const names = ['here', 'here', 'there'];
  const stores = await Promise.all(names.map((name, i) => openTestStore({ name, random: testRandom(i + 1) })));
  for (const [i, store] of stores.entries()) nameOf.set(store, at(names, i));
  return stores;
}

/** One of the three does something; who merges does so with the other browser. */
export function takeStep(stores: readonly Store[], [who, step]: readonly [number, Act]): Promise<void> {
  return perform(at(stores, who), at(stores, who < 2 ? 2 : 0), step);
}

/** Does what it can; a refusal (nothing to change, undone already) is fine here and writes nothing. */
async function perform(store: Store, other: Store, step: Act): Promise<void> {
  switch (step.do) {
    case 'add':
      value(
        await store.addLots(
          'typed',
          step.lots.map((facts) => ({ facts })),
          { batchSize: 2 },
        ),
      );
      return;
    case 'change':
    case 'drop': {
      const lots = await store.allLots();
      if (lots.length === 0) return;
      const id: LotId = at(lots, step.lot % lots.length).id;
      value(await (step.do === 'drop' ? store.dropLot(id) : store.changeLot(id, { set: step.set, clear: ['notes'] })));
      return;
    }
    case 'setup':
      value(await store.saveSetup({ store: storeSchema.parse({ name: step.name, zone: 'America/Boise' }) }));
      return;
    case 'shown':
      value(await store.recordShown(step.keys));
      return;
    case 'undo': {
      const ids = (await storedEntries(nameOf.get(store))).map((entry) => entry.id);
      if (ids.length === 0) return;
      const chosen: EntryId[] = step.entries.map((n) => at(ids, n % ids.length));
      const undone = await store.undo(...chosen);
      if (!undone.ok) expect(undone.reason).toBe('already-undone');
      return;
    }
    case 'merge': {
      const { blob } = await other.backup();
      value(await store.restore(value(await readBackup(blob)), { mode: 'merge' }));
    }
  }
}

/** Under which name each store was opened. */
const nameOf = new Map<Store, string>();
