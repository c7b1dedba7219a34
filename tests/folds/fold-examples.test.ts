import { expect, test } from 'vitest';
import type { Evidence } from '../../src/domain/lot/evidence.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { withoutRow } from '../../src/domain/lot/unread-cell.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { Entry, Subject } from '../../src/journal/entry.ts';
import type { Happening } from '../../src/journal/happening.ts';
import { makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../src/journal/sortable-id.ts';
import { LOTS, lotOfSubject, subjectOfLot } from '../../src/journal/subject.ts';

const PAGE: Evidence = { from: 'page-text', text: '91,000 mi', sure: 'likely' };
const TYPED: Evidence = { from: 'typed', text: '92000', sure: 'certain' };
const START = Date.UTC(2026, 3, 10);
const lotId = nextLotId(instant(START), null, new Uint8Array(8));

/** One device that writes an entry a minute. */
function device(name: number): { write(happening: Happening, subject?: Subject): Entry } {
  let head: WritingHead = { device: newDeviceId(new Uint8Array(10).fill(name)), sequence: 0, hash: '', lastId: null };
  return {
    write(happening, subject = subjectOfLot(lotId)) {
      const at = instant(START + (head.sequence + 1) * 60_000 + name);
      const made = makeEntry(head, { subject, happening }, { at, author: 'buyer', random: new Uint8Array(8) });
      head = made.head;
      return made.entry;
    },
  };
}

const arrival: Happening = {
  kind: 'lots-added',
  source: 'page',
  lots: [{ id: lotId, facts: { make: 'Alder', miles: 91_000 }, evidence: { miles: PAGE } }],
};
const change = (set: object, evidence: Record<string, Evidence> = {}): Happening => ({
  kind: 'lot-changed',
  set,
  clear: [],
  evidence,
});
const lotOf = (entries: readonly Entry[], id: LotId = lotId): LotState | undefined => foldLots(entries).get(id);

test('a lot remembers where it came from and when, and when it last changed', () => {
  const { write } = device(1);
  const entries = [write(arrival, LOTS), write(change({ priceNow: cents(1_240_000) }))];
  expect(lotOf(entries)).toEqual({
    id: lotId,
    facts: { make: 'Alder', miles: 91_000, priceNow: 1_240_000 },
    bidding: { prices: [{ cents: 1_240_000, seenAt: START + 120_001, from: 'typed' }], bids: [], accepted: [] },
    evidence: { miles: PAGE },
    source: 'page',
    addedAt: START + 60_001,
    changedAt: START + 120_001,
    dropped: false,
    bornIn: entries[0]?.id,
  });
});

test('what could not be read of a fact is settled by setting or emptying it, and by nothing else', () => {
  const { write } = device(1);
  const unread = [
    { field: 'recon', text: 'ask Lee' },
    { field: 'transport', text: 'n/k' },
  ] as const;
  const came: Happening = {
    kind: 'lots-added',
    source: 'file',
    lots: [{ id: lotId, facts: { make: 'Alder', unread: [...unread] }, evidence: {} }],
  };
  const entries = [write(came, LOTS), write(change({ miles: 91_000 }))];
  expect(lotOf(entries)?.facts.unread).toEqual(unread);
  entries.push(write(change({ transport: cents(40_000) })));
  expect(lotOf(entries)?.facts.unread).toEqual([unread[0]]);
  entries.push(write({ kind: 'lot-changed', set: {}, clear: ['recon'], evidence: {} }));
  expect(lotOf(entries)?.facts).toEqual({ make: 'Alder', miles: 91_000, transport: 40_000 });
});

test('a row whose cells may have moved stays in doubt, whatever is set, until somebody says that its figures are right', () => {
  const { write } = device(1);
  const unread = [
    { field: 'recon', text: '1' },
    { field: 'row', text: '200' },
  ] as const;
  const came: Happening = {
    kind: 'lots-added',
    source: 'file',
    lots: [{ id: lotId, facts: { make: 'Alder', unread: [...unread] }, evidence: {} }],
  };
  const entries = [write(came, LOTS), write(change({ retail: { likely: cents(1_800_000) }, recon: [] }))];
  expect(lotOf(entries)?.facts.unread).toEqual([unread[1]]);
  expect(withoutRow(unread)).toEqual([unread[0]]);
  expect(withoutRow([unread[1]])).toBeUndefined();
  entries.push(write({ kind: 'lot-changed', set: {}, clear: ['unread'], evidence: {} }));
  expect(lotOf(entries)?.facts.unread).toBeUndefined();
});

test('a new value takes its own evidence, and does not keep that of the value before', () => {
  const { write } = device(1);
  const born = write(arrival, LOTS);
  expect(lotOf([born, write(change({ miles: 92_000 }, { miles: TYPED }))])?.evidence).toEqual({ miles: TYPED });
  expect(lotOf([born, write(change({ miles: 92_000 }))])?.evidence).toEqual({});
  expect(lotOf([born, write(change({ make: 'Birch' }))])?.evidence).toEqual({ miles: PAGE });
  const emptied = write({ kind: 'lot-changed', set: {}, clear: ['miles'], evidence: {} });
  expect(lotOf([born, emptied])).toMatchObject({ facts: { make: 'Alder' }, evidence: {} });
});

test('two devices that change different fields of a lot both have their way', () => {
  const here = device(1);
  const there = device(2);
  const born = here.write(arrival, LOTS);
  there.write(arrival, LOTS);
  const entries = [born, there.write(change({ miles: 95_000 })), here.write(change({ make: 'Birch' }))];
  expect(lotOf(entries)?.facts).toEqual({ make: 'Birch', miles: 95_000 });
});

test('two devices that change the same field: the later id wins, on both', () => {
  const here = device(1);
  const there = device(2);
  const born = here.write(arrival, LOTS);
  there.write(arrival, LOTS);
  const [mine, theirs] = [here.write(change({ miles: 1 })), there.write(change({ miles: 2 }))];
  expect(theirs.id > mine.id).toBe(true);
  expect(lotOf([born, mine, theirs])?.facts.miles).toBe(2);
  expect(lotOf([theirs, mine, born])?.facts.miles).toBe(2);
});

test('undo gives back the value before, and undoing the undo the value after', () => {
  const { write } = device(1);
  const born = write(arrival, LOTS);
  const changed = write(change({ miles: 92_000 }));
  const undo = write({ kind: 'undone', entry: changed.id });
  const redo = write({ kind: 'undone', entry: undo.id });
  const undoAgain = write({ kind: 'undone', entry: redo.id });
  expect(lotOf([born, changed, undo])?.facts.miles).toBe(91_000);
  expect(lotOf([born, changed, undo, redo])?.facts.miles).toBe(92_000);
  expect(lotOf([born, changed, undo, redo, undoAgain])?.facts.miles).toBe(91_000);
});

test('undoing an earlier change keeps a later one', () => {
  const { write } = device(1);
  const born = write(arrival, LOTS);
  const [first, second] = [write(change({ miles: 1 })), write(change({ make: 'Birch' }))];
  expect(lotOf([born, first, second, write({ kind: 'undone', entry: first.id })])?.facts).toEqual({
    make: 'Birch',
    miles: 91_000,
  });
});

test('a lot whose arrival is undone is gone with all its changes, and comes back with them', () => {
  const { write } = device(1);
  const born = write(arrival, LOTS);
  const changed = write(change({ miles: 92_000 }));
  const undo = write({ kind: 'undone', entry: born.id }, LOTS);
  expect(lotOf([born, changed, undo])).toBeUndefined();
  const redo = write({ kind: 'undone', entry: undo.id }, LOTS);
  expect(lotOf([born, changed, undo, redo])?.facts.miles).toBe(92_000);
});

test('a change that came over without the arrival of its lot waits for it', () => {
  const { write } = device(1);
  const born = write(arrival, LOTS);
  const changed = write(change({ miles: 92_000 }));
  expect(foldLots([changed]).size).toBe(0);
  expect(lotOf([changed, born])?.facts.miles).toBe(92_000);
});

test('an undo that claims to come before what it undoes has no effect, so that none can go in a circle', () => {
  const here = device(1);
  const there = device(2);
  const born = here.write(arrival, LOTS);
  const early = there.write({ kind: 'undone', entry: born.id }, LOTS);
  const late = here.write(change({ miles: 92_000 }));
  const forged: Entry = { ...early, happening: { kind: 'undone', entry: late.id } };
  expect(lotOf([born, late, forged])?.facts.miles).toBe(92_000);
});

test('a subject names a lot, or does not', () => {
  expect(lotOfSubject(subjectOfLot(lotId))).toBe(lotId);
  for (const other of ['lots', 'setup', 'lot:', 'lot:x', lotId]) expect(lotOfSubject(other)).toBeNull();
});
