import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldAlertsShown } from '../../src/folds/fold-alerts.ts';
import { foldBooks } from '../../src/folds/fold-books.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import { foldSetup } from '../../src/folds/fold-setup.ts';
import { sectionsOf } from '../../src/journal/states/setup-state.ts';
import { verifyChain } from '../../src/journal/verify-chain.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { value } from './open-test-store.ts';
import { dump, journalOf, storedEntries } from './raw-database.ts';
import { stepsFor, takeStep, threeStores } from './store-acts.ts';

test('views kept up step by step are what the journal folds to from scratch, on two devices that merge', async () => {
  await fc.assert(
    fc.asyncProperty(stepsFor(25), async (steps) => {
      const stores = await threeStores();
      for (const step of steps) await takeStep(stores, step);

      for (const [store, name] of [
        [at(stores, 0), 'here'],
        [at(stores, 2), 'there'],
      ] as const) {
        const journal = await journalOf(name);
        const lots = [...foldLots(journal).values()].sort((a, b) => (a.id < b.id ? -1 : 1));
        expect(await store.allLots()).toEqual(lots);
        const setup = foldSetup(journal);
        expect(await store.setup()).toEqual(sectionsOf(setup));
        expect(await store.purse()).toEqual(setup?.purse ?? null);
        expect(await store.books()).toEqual(foldBooks(journal));
        const { device } = await store.about();
        expect([...(await store.shownAlerts()).values()]).toEqual(
          [...foldAlertsShown(journal, device).values()].sort((a, b) => (a.key < b.key ? -1 : 1)).map(({ at }) => at),
        );
        expect(verifyChain(await storedEntries(name))).toEqual([]);
        const before = await dump(name);
        value(await store.rebuildViews());
        expect(await dump(name)).toEqual(before);
      }
      for (const store of stores) store.close();
    }),
    { numRuns: 20 },
  );
});
