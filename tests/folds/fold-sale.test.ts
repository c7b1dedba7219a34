import { expect, test } from 'vitest';
import { cents } from '../../src/domain/money/cents.ts';
import type { BidAction } from '../../src/domain/sale/bid-action.ts';
import type { Result } from '../../src/domain/sale/result.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { Happening } from '../../src/journal/happening.ts';
import { makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../src/journal/sortable-id.ts';
import { LOTS, subjectOfLot } from '../../src/journal/subject.ts';

const START = Date.UTC(2026, 3, 10);
const lotId = nextLotId(instant(START), null, new Uint8Array(8));

function journalOf(...happenings: readonly Happening[]): Entry[] {
  let head: WritingHead = { device: newDeviceId(new Uint8Array(10)), sequence: 0, hash: '', lastId: null };
  const arrival: Happening = {
    kind: 'lots-added',
    source: 'typed',
    lots: [{ id: lotId, facts: { make: 'Alder' }, evidence: {} }],
  };
  return [arrival, ...happenings].map((happening) => {
    const subject = happening.kind === 'lots-added' ? LOTS : subjectOfLot(lotId);
    const at = instant(START + head.sequence * 60_000);
    const made = makeEntry(head, { subject, happening }, { at, author: 'buyer', random: new Uint8Array(8) });
    head = made.head;
    return made.entry;
  });
}

const bid = (action: BidAction['action'], dollars: number): Happening => ({
  kind: 'bid-noted',
  bid: { action, cents: cents(dollars * 100), at: instant(START) },
});
const result = (ended: Result): Happening => ({ kind: 'result-noted', result: ended, at: instant(START + 5) });
const lotOf = (entries: readonly Entry[]) => foldLots(entries).get(lotId);

test('the proxy that stands is the last that was placed, raised or cut, and none once it is withdrawn', () => {
  const placed = [bid('proxy-placed', 9000), bid('proxy-raised', 9500), bid('live-bid', 9900)];
  expect(lotOf(journalOf(...placed))?.facts.proxy).toBe(950_000);
  expect(lotOf(journalOf(...placed, bid('proxy-withdrawn', 9500)))?.facts).toEqual({ make: 'Alder' });
});

test('every bid action is kept in order with the entry that holds it', () => {
  const entries = journalOf(bid('proxy-placed', 9000), bid('confirmation-seen', 9000));
  expect(lotOf(entries)?.sale?.bids.map(({ action, entry }) => [action, entry])).toEqual([
    ['proxy-placed', entries[1]?.id],
    ['confirmation-seen', entries[2]?.id],
  ]);
});

test('a later result corrects an earlier one, and undoing it brings the earlier back', () => {
  const entries = journalOf(result({ ended: 'lost' }), result({ ended: 'won', hammerCents: cents(910_000) }));
  expect(lotOf(entries)?.sale?.result?.result).toEqual({ ended: 'won', hammerCents: 910_000 });
  const last = entries.at(-1);
  if (last === undefined) throw new Error('no entry');
  const undo: Entry = {
    ...last,
    id: `7${last.id.slice(1)}` as Entry['id'],
    happening: { kind: 'undone', entry: last.id },
  };
  expect(lotOf([...entries, undo])?.sale?.result?.result).toEqual({ ended: 'lost' });
});
