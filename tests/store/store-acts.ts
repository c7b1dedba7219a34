import fc from 'fast-check';
import { expect } from 'vitest';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { HAPPENING_KINDS } from '../../src/journal/happening.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import { readBackup } from '../../src/store/backup/read-backup.ts';
import type { Store } from '../../src/store/store.ts';
import { someFacts } from '../folds/happening-arbitrary.ts';
import { at, changeFor, type Telling, tellingOf } from '../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testClock, testRandom, value } from './open-test-store.ts';
import { journalOf, storedEntries } from './raw-database.ts';

/** What a user may do to a store. */
type Act =
  | { do: 'tell'; telling: Telling }
  | { do: 'add'; lots: LotFacts[] }
  | { do: 'undo'; entries: number[] }
  | { do: 'merge' };

/** Which of the stores does what. */
export type Step = readonly [number, Act];

/** Files come with their bytes, which is a test of its own; lots come in and entries are undone by verbs of the store. */
const TOLD = HAPPENING_KINDS.filter((kind) => !['lots-added', 'undone', 'attachment-kept'].includes(kind));

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ do: fc.constant('tell' as const), telling: tellingOf(TOLD) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('add' as const),
      lots: fc.array(someFacts, { minLength: 1, maxLength: 3 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('undo' as const),
      entries: fc.array(fc.nat(), { minLength: 1, maxLength: 2 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('merge' as const) }) },
);

/** What three stores are told, one thing after the other: which of them, and what. */
export const stepsFor = (most: number) => fc.array(fc.tuple(fc.nat(2), act), { minLength: 5, maxLength: most });

/**
 * Three stores that have nothing yet; when their names are left out, two tabs of one browser, and another browser.
 * @param starts what each one's clock shows at first, in milliseconds since 1970; the same for all when left out
 */
export async function threeStores(
  names = ['here', 'here', 'there'],
  starts: readonly number[] = [],
): Promise<readonly Store[]> {
  freshBrowser();
  const stores = await Promise.all(
    names.map((name, i) => openTestStore({ name, random: testRandom(i + 1), now: testClock(starts[i]).now })),
  );
  for (const [i, store] of stores.entries()) nameOf.set(store, at(names, i));
  return stores;
}

/** One of the three does something; who merges does so with the other browser. */
export function takeStep(stores: readonly Store[], [who, step]: Step): Promise<void> {
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
    case 'tell': {
      const change = changeFor(step.telling, await journalOf(nameOf.get(store)), () => {
        throw new Error('lots come in by addLots');
      });
      const written = await store.append([change]);
      if (!written.ok) expect(written.reason).toBe('no-such-lot');
      return;
    }
    case 'undo': {
      const ids = (await storedEntries(nameOf.get(store))).map((entry) => entry.id);
      if (ids.length === 0) return;
      const chosen: EntryId[] = step.entries.map((n) => at(ids, n % ids.length));
      const undone = await store.undo(...chosen);
      if (!undone.ok) expect(['already-undone', 'not-to-undo']).toContain(undone.reason);
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
