import { beforeEach, expect, test } from 'vitest';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import type { Entry } from '../../../src/journal/entry.ts';
import type { Store } from '../../../src/store/store.ts';
import { freshBrowser, openTestStore, value } from '../open-test-store.ts';

const DATE = '2026-11-28' as LocalDate;
let store: Store;
let lot: LotId;
let invoice: Entry;

beforeEach(async () => {
  freshBrowser();
  store = await openTestStore();
  const { lots } = value(await store.addLots('typed', [{ facts: { make: 'Larkspur' } }]));
  lot = lots[0] as LotId;
  const [entry] = value(
    await store.book({
      kind: 'invoice-confirmed',
      venueId: 'saguaro',
      payee: 'Saguaro Sale Yard',
      document: { file: 'a.csv' },
      costs: [
        { lot, cost: 'hammer', label: 'Vehicle', cents: cents(972_500), date: DATE, number: '7' },
        { lot, cost: 'fee', label: 'Buy fee', cents: cents(45_000), date: DATE, number: '7' },
      ],
      payments: [{ lot, cents: cents(100_000), date: DATE, number: '1002' }],
    }),
  );
  invoice = entry as Entry;
});

const figures = async () => {
  const { costs, payments } = await store.books();
  return [...costs, ...payments].map((line) => line.cents);
};
const correct = async (line: string, to: { readonly cents?: number; readonly number?: string } | null) =>
  value(await store.book({ kind: 'line-corrected', lot, line: `${invoice.id}/${line}`, to: to as never }))[0] as Entry;

test('one line of an invoice is undone alone, and comes back alone', async () => {
  const out = await correct('1', null);
  expect(await figures()).toEqual([972_500, 100_000]);
  value(await store.undo(out.id));
  expect(await figures()).toEqual([972_500, 45_000, 100_000]);
});

test('one line is corrected: its amount and number change, its key, its file and the others stay', async () => {
  await correct('p0', { cents: 90_000, number: '1003' });
  const fixed = await correct('1', { cents: 47_500 });
  const { costs, payments } = await store.books();
  expect(costs[1]).toMatchObject({
    key: `${invoice.id}/1`,
    label: 'Buy fee',
    cents: 47_500,
    document: { file: 'a.csv', number: '7' },
    corrected: fixed.id,
  });
  expect(payments[0]).toMatchObject({ cents: 90_000, document: { number: '1003' } });
  expect(costs[0]?.cents).toBe(972_500);
});

test('a whole invoice that was undone is listed with the undo that brings it back, corrections of its lines with it', async () => {
  await correct('1', { cents: 47_500 });
  value(await store.undo(invoice.id));
  expect(await figures()).toEqual([]);
  const [undone, ...others] = (await store.books()).undone;
  expect(others).toEqual([]);
  expect(undone).toMatchObject({ entry: invoice.id, happening: { kind: 'invoice-confirmed' } });
  value(await store.undo(undone?.undoneBy ?? invoice.id));
  expect(await figures()).toEqual([972_500, 47_500, 100_000]);
  expect((await store.books()).undone).toEqual([]);
});
