import { beforeEach, expect, test } from 'vitest';
import { freshBrowser, openTestStore, testRandom, value } from './open-test-store.ts';

beforeEach(freshBrowser);

test('a lot that was typed can be read, changed, dropped, and taken back step by step', async () => {
  const store = await openTestStore();
  const added = value(await store.addLots('typed', [{ facts: { make: 'Alder', miles: 91_000 } }]));
  const [id] = added.lots;
  if (id === undefined) throw new Error('no lot came in');
  expect((await store.lot(id))?.facts).toEqual({ make: 'Alder', miles: 91_000 });

  const [changed] = value(await store.changeLot(id, { set: { miles: 92_000 }, clear: ['make'] }));
  expect((await store.lot(id))?.facts).toEqual({ miles: 92_000 });
  value(await store.dropLot(id));
  expect((await store.lot(id))?.dropped).toBe(true);

  if (changed === undefined) throw new Error('no entry was made');
  const [undo] = value(await store.undo(changed.id));
  expect(await store.lot(id)).toMatchObject({ facts: { make: 'Alder', miles: 91_000 }, dropped: true });
  if (undo === undefined) throw new Error('no undo was made');
  value(await store.undo(undo.id));
  expect((await store.lot(id))?.facts).toEqual({ miles: 92_000 });

  value(await store.undo(...added.entries));
  expect(await store.lot(id)).toBeNull();
  expect(await store.historyOfLot(id)).toHaveLength(4);
});

test('two tabs that write at once lose nothing', async () => {
  const [one, two] = await Promise.all([openTestStore(), openTestStore({ random: testRandom(2) })]);
  await Promise.all(
    Array.from({ length: 40 }, (_, i) =>
      (i % 2 === 0 ? one : two).addLots('typed', [{ facts: { lotNumber: `${i}` } }]),
    ),
  );
  const numbers = (await one.allLots()).map((lot) => lot.facts.lotNumber);
  expect(new Set(numbers).size).toBe(40);
});
