import { expect, test } from 'vitest';
import { winStands } from '../../src/domain/after-sale/win.ts';
import { winMoney } from '../../src/domain/after-sale/win-money.ts';
import { FEDERAL_CALENDAR } from '../../src/domain/deadline/business-calendar.ts';
import { stillNeeded } from '../../src/domain/dispute/dispute.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { foldLots } from '../../src/folds/fold-lots.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { Happening } from '../../src/journal/happening.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import { makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { newDeviceId, nextLotId } from '../../src/journal/sortable-id.ts';
import { LOTS, subjectOfLot } from '../../src/journal/subject.ts';
import { soldLotOf } from '../../src/views/sold/sold-lot.ts';

const START = Date.UTC(2026, 3, 10);
const lotId = nextLotId(instant(START), null, new Uint8Array(8));
const PLACE = { name: 'Saltgrass', zone: zone('America/Phoenix'), calendar: FEDERAL_CALENDAR };

/** A journal that grows: what is written may name what was written before it. */
function journal() {
  let head: WritingHead = { device: newDeviceId(new Uint8Array(10)), sequence: 0, hash: '', lastId: null };
  const entries: Entry[] = [];
  const write = (happening: Happening): EntryId => {
    const subject = happening.kind === 'lots-added' ? LOTS : subjectOfLot(lotId);
    const at = instant(START + head.sequence * 60_000);
    const made = makeEntry(head, { subject, happening }, { at, author: 'buyer', random: new Uint8Array(8) });
    head = made.head;
    entries.push(made.entry);
    return made.entry.id;
  };
  write({ kind: 'lots-added', source: 'typed', lots: [{ id: lotId, facts: { make: 'Alder' }, evidence: {} }] });
  const lot = () => {
    const found = foldLots(entries).get(lotId);
    if (found === undefined) throw new Error('the lot is gone');
    return found;
  };
  return { write, lot, undo: (entry: EntryId) => write({ kind: 'undone', entry }) };
}

const won: Happening = {
  kind: 'result-noted',
  result: { ended: 'won', hammerCents: cents(1_240_000) },
  at: instant(START),
};
const at = instant(START + 1000);
const opened: Happening = {
  kind: 'dispute-opened',
  opened: {
    side: 'ours',
    reason: 'hidden-defect',
    words: 'The gearbox slips when warm.',
    askedCents: cents(220_000),
    at,
    needs: ['Pictures', 'Estimate'],
  },
};

test('a lot of which nothing was noted after the hammer has no part for it', () => {
  const { write, lot } = journal();
  write(won);
  expect('after' in lot()).toBe(false);
});

test('a step is done by its last note, and open again once it is taken back', () => {
  const { write, lot, undo } = journal();
  write({ kind: 'step-noted', step: 'title', done: true, at });
  const later = write({ kind: 'step-noted', step: 'title', done: true, at: instant(START + 9) });
  expect(lot().after?.steps.title).toMatchObject([{ at: START + 9, entry: later, author: 'buyer' }]);
  undo(later);
  expect(lot().after?.steps.title).toMatchObject([{ at }]);
  write({ kind: 'step-noted', step: 'title', done: false, at });
  expect(lot().after?.steps).toEqual({});
});

test('payments add up, and each can be taken back alone', () => {
  const { write, lot, undo } = journal();
  write({ kind: 'step-noted', step: 'pay', done: true, at, cents: cents(500_000) });
  const second = write({ kind: 'step-noted', step: 'pay', done: true, at, cents: cents(740_000) });
  expect(lot().after?.steps.pay?.map((payment) => payment.cents)).toEqual([500_000, 740_000]);
  undo(second);
  expect(lot().after?.steps.pay?.map((payment) => payment.cents)).toEqual([500_000]);
});

test('a dispute goes from its opening to its end, and every step of the way can be taken back', () => {
  const { write, lot, undo } = journal();
  write(won);
  const dispute = write(opened);
  expect(lot().after).toMatchObject({ disputed: 'open', disputes: [{ entry: dispute, reason: 'hidden-defect' }] });
  const got = write({ kind: 'dispute-stepped', dispute, step: { what: 'got', need: 'Pictures', at } });
  const [first] = lot().after?.disputes ?? [];
  expect(first && stillNeeded(first)).toEqual(['Estimate']);
  undo(got);
  expect(lot().after?.disputes[0]?.steps).toEqual([]);
  const set = { askedCents: cents(90_000), next: { what: 'Take it to the venue’s shop', at } };
  const change = write({ kind: 'dispute-changed', dispute, set, clear: [] });
  expect(lot().after?.disputes[0]).toMatchObject(set);
  undo(change);
  expect(lot().after?.disputes[0]).toMatchObject({ askedCents: 220_000 });
  const cleared = write({ kind: 'dispute-changed', dispute, set: {}, clear: ['askedCents'] });
  expect(lot().after?.disputes[0]?.askedCents).toBeUndefined();
  undo(cleared);
  const closed = write({
    kind: 'dispute-closed',
    dispute,
    outcome: { ended: 'price-adjusted', at, cents: cents(80_000) },
  });
  expect(lot().after).toMatchObject({ disputed: 'closed', disputes: [{ outcome: { cents: 80_000 } }] });
  undo(closed);
  expect(lot().after?.disputed).toBe('open');
  undo(dispute);
  expect('after' in lot()).toBe(false);
});

test('what was said of a dispute comes back with it when the undo of its opening is undone', () => {
  const { write, lot, undo } = journal();
  const dispute = write(opened);
  write({ kind: 'dispute-stepped', dispute, step: { what: 'told', at } });
  const undone = undo(dispute);
  expect(lot().after).toBeUndefined();
  undo(undone);
  expect(lot().after?.disputes[0]?.steps).toMatchObject([{ what: 'told' }]);
});

test('a sale undone gives the money back, and undoing that makes it owed again', () => {
  const { write, lot, undo } = journal();
  const money = () => {
    const { toPay, toComeBack } = winMoney(soldLotOf(lot()), { feeSchedules: [] }, PLACE) ?? {};
    return { stands: winStands(soldLotOf(lot())), toPay, toComeBack };
  };
  write(won);
  write({ kind: 'step-noted', step: 'pay', done: true, at, cents: cents(1_000_000) });
  const dispute = write(opened);
  expect(money()).toEqual({ stands: true, toPay: 240_000, toComeBack: 0 });
  const closed = write({ kind: 'dispute-closed', dispute, outcome: { ended: 'sale-undone', at } });
  expect(money()).toEqual({ stands: false, toPay: 0, toComeBack: 1_000_000 });
  const back = write({ kind: 'step-noted', step: 'refund', done: true, at, cents: cents(1_000_000) });
  expect(money()).toEqual({ stands: false, toPay: 0, toComeBack: 0 });
  undo(back);
  undo(closed);
  expect(money()).toEqual({ stands: true, toPay: 240_000, toComeBack: 0 });
});
