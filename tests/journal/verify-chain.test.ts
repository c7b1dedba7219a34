import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chainHeads, writeHead } from '../../src/journal/chain-head.ts';
import { checkNoted } from '../../src/journal/check-noted.ts';
import type { Entry } from '../../src/journal/entry.ts';
import { entryHash } from '../../src/journal/entry-hash.ts';
import { readNoted, writeNoted } from '../../src/journal/noted.ts';
import { type Envelope, envelopeSchema } from '../../src/journal/read-entry.ts';
import { linkOf, verifyChain } from '../../src/journal/verify-chain.ts';
import { at, play, type Step, stepsOn, telling, union } from '../folds/journal-arbitrary.ts';

const asStored = (entries: readonly Entry[]): Envelope[] =>
  [...entries].sort((a, b) => (a.id < b.id ? -1 : 1)).map((entry) => envelopeSchema.parse(structuredClone(entry)));

/** Six entries on each of two devices. */
function journal(): Envelope[] {
  const steps: Step[] = Array.from({ length: 12 }, (_, i) => ({
    device: i % 2,
    wait: 60_000,
    do: 'tell',
    telling: telling({ kind: 'handed-over', to: `${i}` }),
  }));
  return asStored(union(play(steps, 2)));
}

const faults = (entries: readonly Envelope[]): string[] => verifyChain(entries).map(({ fault }) => fault);
/** Of the first device, in the order of the chain. */
const firstChain = (entries: readonly Envelope[]): Envelope[] =>
  entries.filter(({ device }) => device === at(entries, 0).device);
const rehashed = (entry: Envelope): Envelope => ({ ...entry, hash: entryHash(entry) });
const replaced = (entries: readonly Envelope[], by: Envelope): Envelope[] =>
  entries.map((entry) => (entry.id === by.id ? by : entry));

test('nothing is found in what was written, however many devices wrote and whatever their clocks did', () => {
  fc.assert(
    fc.property(stepsOn(3), (steps) => {
      expect(verifyChain(asStored(union(play(steps, 3))))).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

test('a changed entry is found, and named with its number and device', () => {
  const all = journal();
  const third = at(firstChain(all), 2);
  const [finding, ...more] = verifyChain(replaced(all, { ...third, author: 'someone else' }));
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ fault: 'changed', entry: third.id, sequence: 3 });
  expect(finding?.message).toBe(`Entry number 3 of device ${third.device} was changed after it was written.`);
});

test('a changed entry that was given a fitting hash no longer fits the entry after it', () => {
  const all = journal();
  const third = at(firstChain(all), 2);
  const found = verifyChain(replaced(all, rehashed({ ...third, author: 'someone else' })));
  expect(found).toMatchObject([{ fault: 'wrong-previous', sequence: 4 }]);
});

test('any single change to any field of any entry is found', () => {
  fc.assert(
    fc.property(
      fc.nat(11),
      fc.constantFrom('at', 'author', 'version', 'subject', 'previous', 'happening', 'extra'),
      (i, field) => {
        const all = journal();
        const entry = at(all, i);
        const other = {
          at: 5,
          author: 'x',
          version: 9,
          subject: 'lots',
          previous: entry.hash,
          happening: {},
          extra: 1,
        }[field];
        expect(faults(replaced(all, { ...entry, [field]: other } as Envelope))).toContain('changed');
      },
    ),
  );
});

test('entries taken out of the middle are missing', () => {
  const all = journal();
  const gone = new Set([at(firstChain(all), 1).id, at(firstChain(all), 2).id]);
  const [finding, ...more] = verifyChain(all.filter(({ id }) => !gone.has(id)));
  expect(more).toEqual([]);
  expect(finding?.message).toBe(`Entries number 2 to 3 of device ${at(all, 0).device} are missing.`);
});

test('the first entry is missed as well', () => {
  const [, ...rest] = journal();
  expect(verifyChain(rest).map(({ message }) => message)).toEqual([
    `Entry number 1 of device ${at(firstChain(journal()), 0).device} is missing.`,
  ]);
});

test('two entries in the wrong order are found', () => {
  const [a, b, ...rest] = firstChain(journal());
  expect(faults([b, a, ...rest].filter((entry) => entry !== undefined))).toEqual(['reordered']);
});

test('two entries that swapped their numbers are found', () => {
  const all = journal();
  const [, second, third] = firstChain(all);
  if (second === undefined || third === undefined) throw new Error('too few entries');
  const swapped = replaced(replaced(all, rehashed({ ...second, sequence: 3 })), rehashed({ ...third, sequence: 2 }));
  expect(faults(swapped)).toEqual(expect.arrayContaining(['reordered', 'wrong-previous']));
});

test('an id that occurs twice, and a number that two entries claim, are found', () => {
  const all = journal();
  const second = at(firstChain(all), 1);
  expect(faults([...all, second])).toEqual(['twice']);
  const rival = rehashed({
    ...second,
    id: at(firstChain(all), 1).id.replace(/.$/, 'Z') as Envelope['id'],
    author: 'x',
  });
  expect(faults([...all, rival])).toContain('forked');
});

test('an entry put in from another chain is found', () => {
  const all = journal();
  const first = at(all, 0);
  const second = at(
    all.filter(({ device }) => device !== first.device),
    3,
  );
  const moved = rehashed({ ...second, device: first.device, sequence: 7 });
  expect(faults(all.map((entry) => (entry === second ? moved : entry)))).toContain('other-chain');
});

test('a chain that was cut off or made again is not found without a noted head, and is with one', () => {
  const all = firstChain(journal());
  const [noted] = chainHeads(all.map(linkOf));
  if (noted === undefined) throw new Error('no head');
  expect(noted.sequence).toBe(6);
  expect(checkNoted(noted, all).as).toBe('kept');

  const cutOff = all.slice(0, 4);
  expect(verifyChain(cutOff)).toEqual([]);
  expect(checkNoted(noted, cutOff)).toMatchObject({ as: 'broken', message: expect.stringContaining('cut short') });

  let previous: Envelope['previous'] = '';
  const madeAgain = all.map((entry) => {
    const again = rehashed({ ...entry, author: 'someone else', previous });
    previous = again.hash;
    return again;
  });
  expect(verifyChain(madeAgain)).toEqual([]);
  expect(checkNoted(noted, madeAgain)).toMatchObject({ as: 'broken', message: expect.stringContaining('rewritten') });
  expect(checkNoted({ ...noted, sequence: 1 }, all.slice(2))).toMatchObject({ as: 'not there' });
});

test('a noted head is read as it was shown, or out of the words around it, and anything else is asked for again', () => {
  const [noted] = chainHeads(journal().map(linkOf));
  if (noted === undefined) throw new Error('no head');
  const heads = { heads: [noted], keys: [] };
  expect(readNoted(writeHead(noted))).toEqual({ ok: true, value: heads });
  const mail = `Device ${noted.device.toLowerCase()}, entry ${noted.sequence}: ${noted.hash.toUpperCase()}\nas of Monday`;
  expect(readNoted(mail)).toEqual({ ok: true, value: heads });
  const broken = writeHead(noted).replace(/^(.{50})/, '$1\n ');
  expect(readNoted(broken)).toEqual({ ok: true, value: heads });
  for (const other of ['', noted.hash, writeHead(noted).slice(0, -2), `${writeHead(noted)} ${noted.hash}`])
    expect(readNoted(other)).toMatchObject({ ok: false, reason: 'no-fingerprint' });
});

test('all that is noted in one text is read, keys among it', () => {
  const heads = chainHeads(journal().map(linkOf));
  const keys = heads.map(({ device }, i) => ({ device, publicKey: `${i}`.repeat(64) }));
  expect(heads.length).toBeGreaterThan(1);
  expect(readNoted(writeNoted({ heads, keys }))).toEqual({ ok: true, value: { heads, keys } });
});
