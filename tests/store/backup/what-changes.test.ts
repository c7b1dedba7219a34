import { beforeEach, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { sayHappening } from '../../../src/views/history/say-happening.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testClock, testRandom, value } from '../open-test-store.ts';
import { dump } from '../raw-database.ts';
import { asRead } from './backup-samples.ts';

beforeEach(freshBrowser);

const HOUR = 3_600_000;
const START = Date.UTC(2026, 3, 10, 15);

/** Two browsers that hold the same two lots; the second one is an hour ahead. */
async function twoBrowsers() {
  const here = await openTestStore({ name: 'here' });
  const there = await openTestStore({ name: 'there', random: testRandom(2), now: testClock(START + HOUR).now });
  const facts = [{ make: 'Larkspur', miles: 40_000 }, { make: 'Alder' }];
  const { lots } = value(
    await here.addLots(
      'typed',
      facts.map((each) => ({ facts: each })),
    ),
  );
  value(await there.restore(await asRead(here), { mode: 'merge' }));
  return { here, there, lots: [at(lots, 0), at(lots, 1)] as const };
}

test('a field that was set here and in the file to different values is named, and the later one counts', async () => {
  const { here, there, lots } = await twoBrowsers();
  value(await here.changeLot(lots[0], { set: { priceNow: cents(1_200_000), miles: 41_000 } }));
  value(await there.changeLot(lots[0], { set: { priceNow: cents(1_250_000), miles: 41_000 } }));
  value(await there.changeLot(lots[1], { set: { miles: 9 } }));
  value(await there.addLots('typed', [{ facts: { make: 'Birch' } }]));
  const backup = await asRead(there);
  const { changes } = await here.previewRestore(backup);
  expect(changes).toMatchObject({ lotsAdded: 1, lotsChanged: lots, setup: 0, booked: 0, undos: 0 });
  expect(changes.clashes.map(({ lot, here, there, holds }) => [lot, say(here), say(there), holds])).toEqual([
    [lots[0], 'Price now: $12,000', 'Price now: $12,500', 'there'],
  ]);
  expect(value(await here.restore(backup, { mode: 'merge' })).changes).toEqual(changes);
  expect((await here.lot(lots[0]))?.facts.priceNow).toBe(1_250_000);
});

test('a section of the setup that both changed is named, and a change that was undone clashes with nothing', async () => {
  const { here, there, lots } = await twoBrowsers();
  const { store } = startingSetup(zone('America/Boise'));
  value(await there.saveSetup({ store: { ...store, name: 'Cottonwood East' } }));
  value(await here.saveSetup({ store: { ...store, name: 'Cottonwood Truck & Van' } }));
  const [slip] = value(await here.changeLot(lots[1], { set: { miles: 1 } }));
  value(await there.changeLot(lots[1], { set: { miles: 2 } }));
  value(
    await here.undo(
      at(
        [slip?.id ?? null].filter((id) => id !== null),
        0,
      ),
    ),
  );
  const { changes } = await here.previewRestore(await asRead(there));
  expect(changes.setup).toBe(1);
  expect(changes.clashes.map(({ lot, here }) => [lot, say(here)])).toEqual([[null, 'Setup changed: store']]);
});

test('a restore that is stopped leaves everything as it was, and so does a reading that is', async () => {
  const { here, there, lots } = await twoBrowsers();
  const rows = Array.from({ length: 600 }, (_, i) => ({ facts: { lotNumber: `${i}` } }));
  value(await there.addLots('file', rows, { batchSize: 1 }));
  value(await here.changeLot(lots[0], { set: { miles: 5 } }));
  const backup = await asRead(there);
  const before = await dump('here');
  for (const mode of ['merge', 'replace'] as const) {
    const shares: number[] = [];
    const stop = new AbortController();
    const onShare = (share: number) => {
      shares.push(share);
      stop.abort();
    };
    expect(await here.restore(backup, { mode, signal: stop.signal, onShare })).toMatchObject({ reason: 'stopped' });
    expect(shares).toHaveLength(1);
    expect(shares[0]).toBeLessThan(1);
    expect(await dump('here')).toEqual(before);
  }
  await expect(here.previewRestore(backup, { signal: AbortSignal.abort() })).rejects.toMatchObject({ name: 'Refused' });
  const { blob } = await there.backup();
  expect(await readBackup(blob, undefined, { signal: AbortSignal.abort() })).toMatchObject({ reason: 'stopped' });
  value(await here.restore(backup, { mode: 'merge' }));
  expect(await here.allLots()).toHaveLength(602);
});

const say = ({ happening }: { happening: Parameters<typeof sayHappening>[0] }) => sayHappening(happening);
