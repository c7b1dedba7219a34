import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldAlertsShown } from '../../src/folds/fold-alerts.ts';
import { foldBooks } from '../../src/folds/fold-books.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import { foldSetup } from '../../src/folds/fold-setup.ts';
import { sectionsOf } from '../../src/journal/states/setup-state.ts';
import { verifyChain } from '../../src/journal/verify-chain.ts';
import type { Delivered } from '../../src/team/wire/wire.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { dump, journalOf, storedEntries } from '../store/raw-database.ts';
import { stepsFor, takeStep, threeStores } from '../store/store-acts.ts';
import { inventedServer } from './invented-server.ts';
import { inventedTeam } from './invented-team.ts';

const NAMES = ['buyer', 'manager', 'bookkeeper', 'second manager'];

/** Who comes online after each act, and whether the server answers then. */
const comings = fc.array(fc.record({ who: fc.nat(2), up: fc.boolean(), first: fc.constantFrom('send', 'fetch') }), {
  minLength: 30,
  maxLength: 30,
});

/** The same messages, each in the place of another. */
function mixedUp(messages: readonly Delivered[], order: readonly number[]): Delivered[] {
  const key = (i: number) => (at(order, i % order.length) * (i + 1)) % 97;
  const mixed = [...messages.keys()].sort((a, b) => key(a) - key(b));
  return messages.map(({ place }, i) => ({ ...at(messages, at(mixed, i)), place }));
}

test('three computers, random acts and absences: in the end each has the state of the whole fold', async () => {
  await fc.assert(
    fc.asyncProperty(stepsFor(20), comings, fc.array(fc.nat(), { minLength: 5 }), async (steps, online, order) => {
      const stores = await threeStores(NAMES);
      const computers = await inventedTeam(NAMES);
      const server = inventedServer();
      const meet = async (who: number, first = 'fetch') => {
        const computer = at(computers, who);
        if (first === 'send') await computer.send(server.wire);
        await computer.fetch(server.wire);
        if (first === 'fetch') await computer.send(server.wire);
      };
      for (const [i, step] of steps.entries()) {
        if (step[1].do !== 'merge') await takeStep(stores, step);
        const { who, up, first } = at(online, i);
        server.isUp = up;
        await meet(who, first);
      }
      server.isUp = true;
      for (const who of [0, 1, 2, 0, 1]) await meet(who);
      // Who joins last may get them in any order: behind each other, and one device's later ones before its first.
      server.messages = mixedUp(server.messages, order);
      for (const who of [0, 1, 2, 3]) await meet(who);

      const ids = [...new Set((await Promise.all(NAMES.map(storedEntries))).flat().map(({ id }) => id))].sort();
      for (const [i, name] of NAMES.entries()) {
        const [store, journal] = [at(stores, i), await journalOf(name)];
        expect(journal.map(({ id }) => id)).toEqual(ids);
        expect(await store.allLots()).toEqual([...foldLots(journal).values()].sort((a, b) => (a.id < b.id ? -1 : 1)));
        const setup = foldSetup(journal);
        expect(await store.setup()).toEqual(sectionsOf(setup));
        expect(await store.purse()).toEqual(setup?.purse ?? null);
        expect(await store.books()).toEqual(foldBooks(journal));
        expect([...(await store.shownAlerts()).keys()].sort()).toEqual(
          [...foldAlertsShown(journal, at(computers, i).device).keys()].sort(),
        );
        expect(verifyChain(await storedEntries(name))).toEqual([]);
        const before = await dump(name);
        await store.rebuildViews();
        expect(await dump(name)).toEqual(before);
      }
      for (const one of [...stores, ...computers.map(({ journal }) => journal)]) one.close();
    }),
    // Not made smaller when it fails: each try plays three computers, and hundreds of them take minutes.
    { numRuns: 8, endOnFailure: true },
  );
});
