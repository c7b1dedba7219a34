import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import { canonicalJson } from '../../../src/journal/canonical-json.ts';
import { BACKUP_VERSION } from '../../../src/store/backup/backup-format.ts';
import { readBackup } from '../../../src/store/backup/read-backup.ts';
import { someFacts } from '../../folds/happening-arbitrary.ts';
import { writeScenario } from '../database-scenario.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';
import { dump, storedEntries } from '../raw-database.ts';
import { asRead, backupText, closed, oneLot, read, sample } from './backup-samples.ts';

beforeEach(freshBrowser);

test('whatever is written comes back the same from a file, in another browser', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(someFacts, { maxLength: 8 }),
      fc.integer({ min: 1, max: 4 }),
      async (facts, batchSize) => {
        freshBrowser();
        const store = await openTestStore();
        value(
          await store.addLots(
            'typed',
            facts.map((f) => ({ facts: f })),
            { batchSize },
          ),
        );
        const text = await backupText(store);
        const there = await openTestStore({ name: 'there', random: testRandom(2) });
        value(await there.restore(value(await read(text)), { mode: 'merge' }));
        expect(await storedEntries('there')).toEqual(await storedEntries());
        expect(await there.allLots()).toEqual(await store.allLots());
        // All but the moment at which it was written.
        expect((await backupText(there)).split('\n').slice(1, -2)).toEqual(text.split('\n').slice(1, -2));
      },
    ),
    { numRuns: 40 },
  );
});

test('a bit of everything comes back, unknown entries and another device included', async () => {
  await writeScenario('headroom');
  const store = await openTestStore();
  const backup = value(await readBackup((await store.backup()).blob));
  expect(backup).toMatchObject({ unknown: 1, findings: [] });
  const there = await openTestStore({ name: 'there', random: testRandom(7) });
  value(await there.restore(backup, { mode: 'merge' }));
  const [before, after] = [await dump(), await dump('there')];
  for (const name of ['entries', 'lots', 'setup']) expect(after[name]).toEqual(before[name]);
  // What one browser has said was said to whoever sat before that one.
  expect(before.alerts).toHaveLength(2);
  expect(after.alerts).toEqual([]);
  expect(await there.about()).toMatchObject({ unknown: 1, heads: (await store.about()).heads });
});

test('the header says what is in the file, and the last line is the SHA-256 of all before it', async () => {
  const lines = await sample(3);
  const [header, ...rest] = lines.map((line) => JSON.parse(line));
  const entries = rest.slice(0, -1);
  expect(header).toMatchObject({ format: 'headroom-backup', version: BACKUP_VERSION, counts: { entries: 3, lots: 3 } });
  expect(header.heads).toMatchObject([
    { device: entries[2].device, sequence: 3, hash: entries[2].hash, signed: { signature: expect.any(String) } },
  ]);
  expect(`${lines.join('\n')}\n`).toBe(closed(lines));
});

test('a backup of an empty store can be read as well', async () => {
  const backup = value(await read(await backupText(await openTestStore())));
  expect(backup).toMatchObject({ entries: [], header: { heads: [], counts: { entries: 0, lots: 0 } } });
});

test('a backup larger than one chunk is put together right', async () => {
  const store = await openTestStore();
  const notes = 'é'.repeat(3999);
  value(
    await store.addLots(
      'file',
      Array.from({ length: 600 }, () => ({ facts: { notes } })),
      { batchSize: 20 },
    ),
  );
  const { blob } = await store.backup();
  expect(blob.size).toBeGreaterThan(4_000_000);
  expect(value(await readBackup(blob)).entries).toHaveLength(30);
});

test('a backup taken while somebody writes holds one moment, not half of two', async () => {
  const store = await openTestStore();
  const rows = Array.from({ length: 500 }, (_, i) => ({ facts: { lotNumber: `${i}` } }));
  const importing = store.addLots('file', rows, { batchSize: 10 });
  await new Promise((resolve) => setTimeout(resolve, 20));
  const backup = await asRead(store);
  await importing;
  expect(backup.findings).toEqual([]);
  expect(backup.header.counts.lots).toBe(backup.entries.length * 10);
  expect(canonicalJson(backup.entries)).toBe(canonicalJson((await storedEntries()).slice(0, backup.entries.length)));
});

test('the last backup that was saved is remembered in this browser, and is in no backup', async () => {
  const store = await openTestStore();
  await oneLot(store, 'a');
  expect((await store.about()).lastBackup).toBeNull();
  const file = await store.backup();
  value(await store.noteBackup(file));
  expect((await store.about()).lastBackup).toEqual({ at: file.header.exportedAt, entries: 1 });
  expect(await backupText(store)).not.toContain('last-backup');
});

test('a letter of several bytes that is cut by the pieces a file is read in comes through', async () => {
  const store = await openTestStore();
  value(await store.addLots('typed', [{ facts: { make: 'Ålder', notes: 'línea “uno” 🚚' } }]));
  const bytes = new TextEncoder().encode(await backupText(store));
  const file = new Blob([bytes]);
  file.stream = () =>
    new ReadableStream({
      start(controller) {
        for (const byte of bytes) controller.enqueue(Uint8Array.of(byte));
        controller.close();
      },
    });
  const backup = value(await readBackup(file));
  expect(backup.entries.map(canonicalJson)).toEqual((await storedEntries()).map(canonicalJson));
});
