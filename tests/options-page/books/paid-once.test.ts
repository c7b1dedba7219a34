import { beforeEach, describe, expect, test } from 'vitest';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import type { BookedHappening } from '../../../src/journal/happenings/books.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import type { Store } from '../../../src/store/store.ts';
import { phoenix } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';
import { bothOf, DAY, paid, VENUE, wonLot } from './both-places.ts';

beforeEach(freshBrowser);

const bill = (lot: LotId): BookedHappening => ({
  kind: 'invoice-confirmed',
  venueId: 'saltgrass',
  payee: VENUE,
  document: { file: 'november.csv' },
  costs: [
    { lot, cost: 'hammer', label: 'Vehicle', cents: cents(1_240_000), date: DAY },
    { lot, cost: 'fee', label: 'Buy fee', cents: cents(44_900), date: DAY },
  ],
  payments: [],
});

describe('a payment', () => {
  test('noted with a tap is in the books, and gone from both when it is taken back', async () => {
    const store = await openTestStore();
    const lot = await wonLot(store);
    expect(await bothOf(store, lot)).toMatchObject({ toDo: 1_282_400, folder: { open: 1_282_400, payments: [] } });
    const note = at(value(await store.append([{ subject: subjectOfLot(lot), happening: paid(1_282_400) }])), 0);
    const both = await bothOf(store, lot);
    expect(both).toMatchObject({ toDo: 0, folder: { open: 0, payments: [{ cents: 1_282_400, date: '2026-11-25' }] } });
    expect(both.balance.get('bank')).toBe(-1_282_400);
    value(await store.undo(note.id));
    expect(await bothOf(store, lot)).toMatchObject({ toDo: 1_282_400, folder: { open: 1_282_400, payments: [] } });
  });

  test('booked in the folder is done under To do, and open again when it is taken back', async () => {
    const store = await openTestStore();
    const lot = await wonLot(store);
    const payment = { date: DAY, payee: VENUE, lines: [{ lot, cents: cents(1_282_400) }] };
    const booked = at(value(await store.book({ kind: 'payment-booked', ...payment })), 0);
    const { sold, toDo } = await bothOf(store, lot);
    expect(toDo).toBe(0);
    expect(sold.steps.pay).toMatchObject([{ cents: 1_282_400, inBooks: true, entry: booked.id }]);
    value(await store.undo(booked.id));
    expect(await bothOf(store, lot)).toMatchObject({ toDo: 1_282_400, sold: { steps: {} } });
  });

  test('goes against what the sale really billed, which is owed in place of what was expected', async () => {
    const store = await openTestStore();
    const lot = await wonLot(store);
    value(await store.append([{ subject: subjectOfLot(lot), happening: paid(1_282_400) }]));
    value(await store.book(bill(lot)));
    // The fee was $25 dearer than the price list.
    expect(await bothOf(store, lot)).toMatchObject({ toDo: 2500, folder: { open: 2500, owed: 2500 } });
  });

  test('by the lender is a payment, and puts the car on the floor plan', async () => {
    const store = await openTestStore();
    const lot = await wonLot(store);
    value(await store.book({ kind: 'floor-booked', lot, move: 'draw', cents: cents(1_240_000), date: DAY }));
    const { toDo, sold } = await bothOf(store, lot);
    expect(toDo).toBe(42_400);
    expect(sold.steps.fund).toHaveLength(1);
  });

  test('noted without an amount is what was owed, and nothing where the books have it already', async () => {
    const store = await openTestStore();
    const lot = await wonLot(store);
    value(await store.append([{ subject: subjectOfLot(lot), happening: paid() }]));
    expect((await bothOf(store, lot)).folder.payments).toMatchObject([{ cents: 1_282_400 }]);
    value(await store.book({ kind: 'payment-booked', date: DAY, lines: [{ lot, cents: cents(1_282_400) }] }));
    const both = await bothOf(store, lot);
    expect(both.folder.payments).toHaveLength(1);
    expect(both.toDo).toBe(0);
  });

  test('of a carrier is none of the venue’s', async () => {
    const store = await openTestStore();
    const lot = await wonLot(store);
    const haul = { lot, cost: 'transport' as const, label: 'Haul', cents: cents(80_000) };
    value(await store.book({ kind: 'costs-booked', date: DAY, paid: 'owed', payee: 'A carrier', lines: [haul] }));
    expect(await bothOf(store, lot)).toMatchObject({ money: { toPay: 1_282_400, others: 80_000 }, toDo: 1_362_400 });
    const payment = { date: DAY, payee: 'A carrier', lines: [{ lot, cents: cents(80_000) }] };
    value(await store.book({ kind: 'payment-booked', ...payment }));
    const { money, sold } = await bothOf(store, lot);
    expect(money).toMatchObject({ toPay: 1_282_400, others: 0 });
    expect(sold.steps.pay).toBeUndefined();
  });
});

test('the title is one paper, and the last word on it holds in both places', async () => {
  const store = await openTestStore();
  const lot = await wonLot(store);
  const title = async () => {
    const { sold, folder } = await bothOf(store, lot);
    return [sold.steps.title?.length ?? 0, folder.papers.filter(({ paper }) => paper === 'title').length];
  };
  value(await store.book({ kind: 'paper-noted', lot, paper: 'title', date: DAY }));
  expect(await title()).toEqual([1, 1]);
  value(await store.book({ kind: 'paper-noted', lot, paper: 'title' }));
  expect(await title()).toEqual([0, 0]);
  const noted: Happening = { kind: 'step-noted', step: 'title', done: true, at: phoenix('2026-12-01T09:00') };
  value(await store.append([{ subject: subjectOfLot(lot), happening: noted }]));
  expect(await title()).toEqual([1, 1]);
});

describe('the money by which a dispute ended', () => {
  async function disputed(store: Store, ended: 'price-adjusted' | 'sale-undone', toUs: number) {
    const lot = await wonLot(store);
    value(await store.book(bill(lot)));
    const opened = { side: 'ours' as const, reason: 'hidden-defect' as const, words: 'It leaks.', needs: [] };
    const subject = subjectOfLot(lot);
    const [entry] = value(
      await store.append([{ subject, happening: { kind: 'dispute-opened', opened: { ...opened, at: instant(1) } } }]),
    );
    const dispute = entry?.id as EntryId;
    const outcome = { ended, at: phoenix('2026-12-09T12:00'), cents: cents(toUs) };
    const closed = at(
      value(await store.append([{ subject, happening: { kind: 'dispute-closed', dispute, outcome } }])),
      0,
    );
    return { lot, dispute, closed: closed.id };
  }
  const settle = (lot: LotId, dispute: EntryId, toUs: Cents | number): BookedHappening => ({
    kind: 'settlement-booked',
    dispute,
    lot,
    date: DAY,
    payee: VENUE,
    label: 'Price adjusted',
    cents: cents(-toUs),
  });

  test('is owed less at once, booked only when somebody says so, and then not counted twice', async () => {
    const store = await openTestStore();
    const { lot, dispute, closed } = await disputed(store, 'price-adjusted', 70_000);
    const before = await bothOf(store, lot);
    expect(before).toMatchObject({ toDo: 1_214_900, folder: { open: 1_214_900, owed: 1_284_900 } });
    expect(before.folder.settlements).toMatchObject([{ dispute, cents: 70_000, ended: 'Price adjusted' }]);
    expect(before.folder.missing).toContain('Credit of $700 from a dispute');
    const booked = at(value(await store.book(settle(lot, dispute, 70_000))), 0);
    const after = await bothOf(store, lot);
    expect(after).toMatchObject({ toDo: 1_214_900, folder: { open: 1_214_900, owed: 1_214_900, settlements: [] } });
    expect(after.balance.get('inventory')).toBe(1_214_900);
    expect(after.folder.lines.find(({ label }) => label === 'Price adjusted')).toMatchObject({ look: false });
    // The dispute is opened again: what is booked has to be taken back, and until then nothing is owed wrongly.
    value(await store.undo(closed));
    expect(await bothOf(store, lot)).toMatchObject({
      toDo: 1_284_900,
      folder: { open: 1_284_900, settlements: [{ cents: -70_000 }] },
    });
    value(await store.undo(booked.id));
    expect(await bothOf(store, lot)).toMatchObject({ toDo: 1_284_900, folder: { settlements: [] } });
  });

  test('of a sale undone comes back whole, and the refund that is noted closes the account', async () => {
    const store = await openTestStore();
    const { lot, dispute } = await disputed(store, 'sale-undone', 18_000);
    value(await store.append([{ subject: subjectOfLot(lot), happening: paid(1_284_900) }]));
    expect((await bothOf(store, lot)).toDo).toBe(-1_302_900);
    value(await store.book(settle(lot, dispute, 18_000)));
    const refund: Happening = { ...paid(1_302_900), step: 'refund' } as Happening;
    value(await store.append([{ subject: subjectOfLot(lot), happening: refund }]));
    const both = await bothOf(store, lot);
    expect(both).toMatchObject({ toDo: 0, folder: { open: 0, stage: 'undone', missing: [] } });
    expect(Object.fromEntries(both.balance)).toEqual({ bank: 18_000, undone: -18_000 });
  });
});
