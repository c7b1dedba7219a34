import { expect, test } from 'vitest';
import { storeSchema } from '../../src/domain/setup/store.ts';
import { JOURNAL_VERSION } from '../../src/journal/entry.ts';
import { entryHash } from '../../src/journal/entry-hash.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { at, play, type Step, telling } from '../folds/journal-arbitrary.ts';

const set = { store: storeSchema.parse({ name: 'a', zone: 'America/Boise' }) };
const step: Step = { device: 0, wait: 0, do: 'tell', telling: telling({ kind: 'setup-changed', set }) };
const entry = at(at(play([step], 1), 0), 0);
/** As somebody else's program would have stored it. */
const stored = (fields: object): Record<string, unknown> => {
  const raw = { ...structuredClone(entry), ...fields };
  return { ...raw, hash: entryHash(raw) };
};

test('what this version wrote is known', () => {
  expect(readEntry(entry)).toMatchObject({ as: 'known', entry, raw: entry });
});

test('a kind that only a newer version has is kept as it is, to the last field', () => {
  const raw = stored({
    version: JOURNAL_VERSION + 1,
    subject: 'folder:9',
    happening: { kind: 'invoice-matched', cents: 5 },
    witness: 'x',
  });
  const read = readEntry(raw);
  expect(read.as).toBe('unknown');
  expect(read.as === 'unknown' && read.raw).toBe(raw);
  expect(entryHash(raw)).toBe(raw.hash);
});

test('a new field in a known kind is newer as well, when its version says so, and damage when it does not', () => {
  const happening = { kind: 'setup-changed', set: { store: { name: 'a', zone: 'America/Boise', hue: 5 } } };
  expect(readEntry(stored({ version: JOURNAL_VERSION + 1, happening })).as).toBe('unknown');
  const read = readEntry(stored({ happening }));
  expect(read).toMatchObject({ as: 'unreadable', message: expect.stringContaining('happening.set.store') });
});

test('a newer version that wrote nothing new is understood', () => {
  expect(readEntry(stored({ version: JOURNAL_VERSION + 1 })).as).toBe('known');
});

test('what has not even the envelope of an entry is unreadable', () => {
  for (const raw of [
    null,
    5,
    'x',
    [],
    {},
    stored({ version: JOURNAL_VERSION + 1, sequence: 0 }),
    stored({ device: 'me' }),
  ])
    expect(readEntry(raw).as).toBe('unreadable');
});

test('a kind that does not exist, in the version that should know it, is unreadable', () => {
  expect(readEntry(stored({ happening: { kind: 'lot-painted' } })).as).toBe('unreadable');
});
