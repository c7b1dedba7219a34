import { beforeEach, expect, test } from 'vitest';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../open-test-store.ts';

beforeEach(freshBrowser);

const closesAt = (minute: number, lotNumber: string): LotFacts => ({
  lotNumber,
  close: closeTimeSchema.parse({
    instant: minute * 60_000,
    text: '',
    zone: 'America/Boise',
    how: 'store-zone',
    doubts: [],
    otherwise: [],
  }),
});
const numbers = (lots: readonly LotState[]): (string | undefined)[] => lots.map((lot) => lot.facts.lotNumber);
const minute = (n: number) => instant(n * 60_000);

async function fourLots() {
  const store = await openTestStore();
  const facts = [closesAt(30, 'c'), closesAt(10, 'a'), { lotNumber: 'no close' }, closesAt(20, 'b')];
  const { lots } = value(
    await store.addLots(
      'file',
      facts.map((f) => ({ facts: f })),
    ),
  );
  return { store, lots };
}

test('lots come by their close, the soonest first, within bounds and a limit', async () => {
  const { store } = await fourLots();
  expect(numbers(await store.lotsByClose())).toEqual(['a', 'b', 'c']);
  expect(numbers(await store.lotsByClose({ from: minute(20) }))).toEqual(['b', 'c']);
  expect(numbers(await store.lotsByClose({ before: minute(20) }))).toEqual(['a']);
  expect(numbers(await store.lotsByClose({ from: minute(10), before: minute(30) }))).toEqual(['a', 'b']);
  expect(numbers(await store.lotsByClose({ from: minute(10), limit: 1 }))).toEqual(['a']);
  expect(await store.lotsByClose({ from: minute(30), before: minute(30) })).toEqual([]);
});

test('a lot that is not watched any more is not among the closings, and does not use up the limit', async () => {
  const { store, lots } = await fourLots();
  value(await store.dropLot(at(lots, 1)));
  expect(numbers(await store.lotsByClose({ limit: 1 }))).toEqual(['b']);
  expect(await store.allLots()).toHaveLength(4);
});

test('a close that is moved, or emptied, moves the lot', async () => {
  const { store, lots } = await fourLots();
  value(await store.changeLot(at(lots, 1), { set: closesAt(40, 'a') }));
  expect(numbers(await store.lotsByClose())).toEqual(['b', 'c', 'a']);
  value(await store.changeLot(at(lots, 1), { clear: ['close'] }));
  expect(numbers(await store.lotsByClose())).toEqual(['b', 'c']);
});

test('all lots come in the order in which they came in, also those of one batch', async () => {
  const { store } = await fourLots();
  expect(numbers(await store.allLots())).toEqual(['c', 'a', 'no close', 'b']);
});

test('more lots than one request asks for are all there, once', async () => {
  const store = await openTestStore();
  const many = Array.from({ length: 5_003 }, (_, i) => ({ facts: { lotNumber: `${i}` } }));
  value(await store.addLots('file', many, { batchSize: 1000 }));
  expect(numbers(await store.allLots())).toEqual(many.map((lot) => lot.facts.lotNumber));
});

test('more closings than one request asks for are all there, once, though thousands share a moment', async () => {
  const store = await openTestStore();
  const many = Array.from({ length: 10_500 }, (_, i) => ({
    facts: closesAt(i < 200 ? 1 : i < 10_300 ? 2 : 3, `${i}`),
  }));
  value(await store.addLots('file', many, { batchSize: 1000 }));
  expect(numbers(await store.lotsByClose())).toEqual(many.map((lot) => lot.facts.lotNumber));
  expect(numbers(await store.lotsByClose({ from: minute(2), limit: 3 }))).toEqual(['200', '201', '202']);
});

test('lots with one VIN are found, however often it was seen', async () => {
  const store = await openTestStore();
  const vin = '0EXAMPLE000000001';
  value(await store.addLots('typed', [{ facts: { vin, sale: 'one' } }, { facts: { vin: '0EXAMPLE000000002' } }]));
  value(await store.addLots('page', [{ facts: { vin, sale: 'two' } }]));
  expect((await store.lotsByVin(vin)).map((lot) => lot.facts.sale)).toEqual(['one', 'two']);
  expect(await store.lotsByVin('')).toEqual([]);
});

test('the history of a lot is its arrival, its changes and what was undone, in order', async () => {
  const { store, lots } = await fourLots();
  const id = at(lots, 0);
  value(await store.changeLot(at(lots, 1), { set: { miles: 1 } }));
  const [change] = value(await store.changeLot(id, { set: { miles: 5 } }));
  if (change === undefined) throw new Error('no entry');
  value(await store.undo(change.id));
  const history = await store.historyOfLot(id);
  const kinds = history.map((item) => (item.read.as === 'known' ? item.read.entry.happening.kind : item.read.as));
  expect(kinds).toEqual(['lots-added', 'lot-changed', 'undone']);
  expect(history.map((item) => item.counts)).toEqual([true, false, true]);
});

test('the history tells that the arrival was undone and brought back', async () => {
  const { store, lots } = await fourLots();
  const [arrival] = await store.historyOfLot(at(lots, 0));
  if (arrival === undefined) throw new Error('no arrival');
  const [undo] = value(await store.undo(arrival.id));
  if (undo === undefined) throw new Error('no undo');
  value(await store.undo(undo.id));
  const history = await store.historyOfLot(at(lots, 0));
  expect(history.map((item) => item.counts)).toEqual([true, false, true]);
});

test('what is not there is null or empty, not an error', async () => {
  const { store, lots } = await fourLots();
  const store2 = await openTestStore({ name: 'other' });
  expect(await store2.lot(at(lots, 0))).toBeNull();
  expect(await store2.allLots()).toEqual([]);
  expect(await store2.historyOfLot(at(lots, 0))).toEqual([]);
  expect(await store2.shownAlerts()).toEqual(new Map());
  expect(await store.lot(at(lots, 0))).not.toBeNull();
});

test('lots that were won or disputed come without the others, dropped ones too, and leave when that is taken back', async () => {
  const { store, lots } = await fourLots();
  const ended = { at: minute(40), result: { ended: 'won' as const, hammerCents: cents(900_000) } };
  value(await store.noteResult(at(lots, 3), ended));
  value(await store.noteResult(at(lots, 1), { at: minute(40), result: { ended: 'lost' } }));
  const opened = {
    side: 'ours' as const,
    reason: 'bid-not-taken' as const,
    words: 'No proxy.',
    at: minute(41),
    needs: [],
  };
  const [entry] = value(
    await store.append([{ subject: subjectOfLot(at(lots, 1)), happening: { kind: 'dispute-opened', opened } }]),
  );
  value(await store.dropLot(at(lots, 1)));
  expect(numbers(await store.lotsAfterSale())).toEqual(['a', 'b']);
  if (entry === undefined) throw new Error('no entry');
  value(await store.undo(entry.id));
  expect(numbers(await store.lotsAfterSale())).toEqual(['b']);
});
