import { beforeEach, expect, test } from 'vitest';
import { entryHash } from '../../../src/journal/entry-hash.ts';
import type { Envelope } from '../../../src/journal/read-entry.ts';
import { LOTS } from '../../../src/journal/subject.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { failWrite } from '../fault.ts';
import { freshBrowser, openTestStore, testRandom, value } from '../open-test-store.ts';
import { dump, storedEntries } from '../raw-database.ts';
import { asRead, closed, lotNumbers, oneLot, read, sample, tamperedLine } from './backup-samples.ts';

beforeEach(freshBrowser);

test('merging keeps what is only here and what is only there, and merging again changes nothing', async () => {
  const [here, there] = [
    await openTestStore({ name: 'here' }),
    await openTestStore({ name: 'there', random: testRandom(2) }),
  ];
  await oneLot(here, 'here');
  await oneLot(there, 'there');
  const backup = await asRead(there);
  expect(await here.previewRestore(backup)).toEqual({
    added: 1,
    same: 0,
    newPlaces: `number 1 of device ${(await there.about()).device}`,
    onlyHere: 1,
    conflict: null,
    changes: expect.objectContaining({ lotsAdded: 1, clashes: [] }),
  });
  expect(value(await here.restore(backup, { mode: 'merge' }))).toMatchObject({
    added: 1,
    same: 0,
    files: 0,
    removed: 0,
  });
  expect(await lotNumbers(here)).toEqual(['here', 'there']);
  const once = await dump('here');
  expect(value(await here.restore(backup, { mode: 'merge' }))).toMatchObject({
    added: 0,
    same: 1,
    files: 0,
    removed: 0,
  });
  expect(await dump('here')).toEqual(once);
  value(await there.restore(await asRead(here), { mode: 'merge' }));
  expect(await there.allLots()).toEqual(await here.allLots());
});

test('replacing throws away what is only here, and says how much', async () => {
  const [here, there] = [
    await openTestStore({ name: 'here' }),
    await openTestStore({ name: 'there', random: testRandom(2) }),
  ];
  await oneLot(here, 'here');
  await oneLot(there, 'there');
  expect(value(await here.restore(await asRead(there), { mode: 'replace' }))).toMatchObject({
    added: 1,
    same: 0,
    files: 0,
    removed: 1,
  });
  expect(await lotNumbers(here)).toEqual(['there']);
});

test('a broken chain in a file that is otherwise whole is shown, refused, and taken only when the user says so', async () => {
  const lines = await sample();
  lines[2] = tamperedLine(
    at(lines, 2),
    (entry) => {
      entry.author = 'someone else';
    },
    true,
  );
  const backup = value(await read(closed(lines)));
  expect(backup.findings).toMatchObject([{ fault: 'wrong-previous', sequence: 3 }]);
  const store = await openTestStore();
  const before = await dump();
  expect(await store.restore(backup, { mode: 'replace' })).toMatchObject({
    ok: false,
    reason: 'broken-chain',
    message: expect.stringContaining('number 3'),
  });
  expect(await dump()).toEqual(before);
  value(await store.restore(backup, { mode: 'merge', despiteFindings: true }));
  expect(await store.allLots()).toHaveLength(3);
  expect((await store.checkJournal()).findings).toMatchObject([{ fault: 'wrong-previous' }]);
});

test('two entries with one number are never taken', async () => {
  const lines = await sample();
  lines[3] = tamperedLine(
    at(lines, 3),
    (entry) => {
      entry.sequence = 2;
    },
    true,
  );
  const { device, sequence, hash } = JSON.parse(lines[3]);
  lines[0] = JSON.stringify({ ...JSON.parse(at(lines, 0)), heads: [{ device, sequence, hash }] });
  const backup = value(await read(closed(lines)));
  const store = await openTestStore();
  expect(await store.restore(backup, { mode: 'merge', despiteFindings: true })).toMatchObject({
    ok: false,
    reason: 'broken-chain',
    message: expect.stringContaining('number 2'),
  });
});

test('after a restore this browser continues its own chain, and ids sort after all that came', async () => {
  const [here, there] = [
    await openTestStore({ name: 'here' }),
    await openTestStore({ name: 'there', random: testRandom(2) }),
  ];
  await oneLot(here, 'a');
  await oneLot(there, 'b');
  const { device } = await here.about();
  value(await here.restore(await asRead(there), { mode: 'merge' }));
  await oneLot(here, 'c');
  expect((await here.about()).device).toBe(device);
  const entries = await storedEntries('here');
  expect(entries.at(-1)).toMatchObject({ device, sequence: 2 });
  expect((await here.checkJournal()).findings).toEqual([]);
});

test('a browser that gets its own older backup back, with nothing lost, continues where it was', async () => {
  const here = await openTestStore();
  await oneLot(here, 'a');
  const older = await asRead(here);
  await oneLot(here, 'b');
  value(await here.restore(older, { mode: 'merge' }));
  await oneLot(here, 'c');
  expect(await lotNumbers(here)).toEqual(['a', 'b', 'c']);
  expect((await here.about()).heads).toMatchObject([{ sequence: 3 }]);
});

test('a browser whose profile was put back to an earlier day takes the rest of its own chain from a backup', async () => {
  const here = await openTestStore({ name: 'here' });
  await oneLot(here, 'a');
  const early = await asRead(here);
  await oneLot(here, 'b');
  const late = await asRead(here);
  value(await here.restore(early, { mode: 'replace' }));
  const { device } = await here.about();
  value(await here.restore(late, { mode: 'merge' }));
  await oneLot(here, 'c');
  expect((await here.about()).device).toBe(device);
  expect(await lotNumbers(here)).toEqual(['a', 'b', 'c']);
  expect((await here.checkJournal()).findings).toEqual([]);
});

test('when a replacement drops entries of this browser, it begins a new chain, so that the old file still merges', async () => {
  const here = await openTestStore();
  await oneLot(here, 'a');
  const early = await asRead(here);
  await oneLot(here, 'b');
  const late = await asRead(here);
  const { device } = await here.about();
  value(await here.restore(early, { mode: 'replace' }));
  expect((await here.about()).device).not.toBe(device);
  await oneLot(here, 'c');
  value(await here.restore(late, { mode: 'merge' }));
  expect(await lotNumbers(here)).toEqual(['a', 'b', 'c']);
  expect((await here.checkJournal()).findings).toEqual([]);
});

test('a new browser that gets everything back from a file keeps its own new device', async () => {
  const lost = await openTestStore({ name: 'lost' });
  await oneLot(lost, 'a');
  const found = await openTestStore({ name: 'found', random: testRandom(4) });
  const { device } = await found.about();
  value(await found.restore(await asRead(lost), { mode: 'replace' }));
  await oneLot(found, 'b');
  expect((await found.about()).device).toBe(device);
  expect((await found.about()).heads).toMatchObject([{ sequence: 1 }, { sequence: 1 }]);
});

test('an entry that is here with other contents is a conflict, and is named', async () => {
  const here = await openTestStore();
  await oneLot(here, 'a');
  const backup = await asRead(here);
  const [entry, ...rest] = backup.entries;
  if (entry === undefined) throw new Error('an empty backup');
  const other: Envelope = { ...entry, author: 'someone else' };
  const forged = { ...backup, entries: [{ ...other, hash: entryHash(other) }, ...rest] };
  const before = await dump();
  expect((await here.previewRestore(forged)).conflict).toMatchObject({ reason: 'conflict' });
  expect(await here.restore(forged, { mode: 'merge' })).toMatchObject({
    ok: false,
    reason: 'conflict',
    message: expect.stringContaining(`number 1 of device ${entry.device}`),
  });
  expect(await dump()).toEqual(before);
});

test('a lot that came in by different entries here and there is a conflict, and is named', async () => {
  const here = await openTestStore({ name: 'here' });
  const there = await openTestStore({ name: 'there', random: testRandom(2) });
  const { lots } = value(await here.addLots('typed', [{ facts: { lotNumber: '1' } }]));
  const id = at(lots, 0);
  value(
    await there.append([
      { subject: LOTS, happening: { kind: 'lots-added', source: 'typed', lots: [{ id, facts: {}, evidence: {} }] } },
    ]),
  );
  const backup = await asRead(there);
  expect(await here.previewRestore(backup)).toMatchObject({ conflict: { reason: 'lot-twice' } });
  const before = await dump('here');
  expect(await here.restore(backup, { mode: 'merge' })).toMatchObject({
    ok: false,
    reason: 'lot-twice',
    message: expect.stringContaining(id),
  });
  expect(await dump('here')).toEqual(before);
});

test('two copies of one profile that both went on are a fork, and are named', async () => {
  const one = await openTestStore({ name: 'one' });
  await oneLot(one, 'a');
  // The same random bytes make the same device: a copy.
  const two = await openTestStore({ name: 'two' });
  await oneLot(two, 'b');
  await oneLot(two, 'c');
  const [here, there] = [await one.about(), await two.about()];
  expect(here.device).toBe(there.device);
  const answer = await one.restore(await asRead(two), { mode: 'merge' });
  expect(answer).toMatchObject({ ok: false, message: expect.stringContaining('number 1') });
  expect(await lotNumbers(one)).toEqual(['a']);
});

test.each(['throws', 'disk-full'] as const)('a restore during which a write %s changes nothing', async (fault) => {
  const [here, there] = [
    await openTestStore({ name: 'here' }),
    await openTestStore({ name: 'there', random: testRandom(2) }),
  ];
  for (const number of ['a', 'b', 'c']) await oneLot(there, number);
  await oneLot(here, 'here');
  const backup = await asRead(there);
  const before = await dump('here');
  failWrite('entries', 2, fault);
  const restoring = here.restore(backup, { mode: 'replace' });
  if (fault === 'throws') await expect(restoring).rejects.toThrow('made to fail');
  else expect(await restoring).toMatchObject({ ok: false, reason: 'disk-full' });
  expect(await dump('here')).toEqual(before);
});
