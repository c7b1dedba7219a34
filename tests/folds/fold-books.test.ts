import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lotIdSchema } from '../../src/domain/lot/lot.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { foldBooks } from '../../src/folds/fold-books.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { Happening } from '../../src/journal/happening.ts';
import { BOOKS } from '../../src/journal/happenings/books.ts';
import { deviceIdSchema, entryIdSchema } from '../../src/journal/ids.ts';
import { makeEntry, type WritingHead } from '../../src/journal/make-entry.ts';
import { readEntry } from '../../src/journal/read-entry.ts';
import { BOOKS as THE_BOOKS } from '../../src/journal/subject.ts';
import type { There } from './happening-arbitrary.ts';
import { tellingOf } from './journal-arbitrary.ts';

const THERE: There = {
  lot: lotIdSchema.parse('01HX0000000000000000000001'),
  dispute: entryIdSchema.parse('01HX0000000000000000000002'),
  entry: entryIdSchema.parse('01HX0000000000000000000003'),
  newLot: () => THERE.lot,
};
const BOOKED = BOOKS.map(({ kind }) => kind);
const booked: fc.Arbitrary<Happening> = tellingOf(BOOKED).map(({ tell }) => tell(THERE));

function written(happenings: readonly (Happening | 'undo')[]): Entry[] {
  let head: WritingHead = { device: deviceIdSchema.parse('0000000001'), sequence: 0, hash: '', lastId: null };
  const entries: Entry[] = [];
  for (const one of happenings) {
    const last = entries.at(-1);
    if (one === 'undo' && last === undefined) continue;
    const happening: Happening = one === 'undo' ? { kind: 'undone', entry: last?.id ?? ('' as never) } : one;
    const made = makeEntry(
      head,
      { subject: THE_BOOKS, happening },
      { at: instant(1_790_000_000_000), author: 'a', random: new Uint8Array(8) },
    );
    entries.push(made.entry);
    head = made.head;
  }
  return entries;
}

const story = fc.array(
  fc.oneof({ weight: 4, arbitrary: booked }, { weight: 1, arbitrary: fc.constant('undo' as const) }),
  { maxLength: 14 },
);

test('entries in any order, and twice, come to the same books, and each is one that can be stored', () => {
  fc.assert(
    fc.property(story, fc.infiniteStream(fc.nat()), (happenings, luck) => {
      const entries = written(happenings);
      for (const entry of entries) expect(readEntry(entry).as).toBe('known');
      const shuffled = [...entries, ...entries.slice(0, 3)]
        .map((entry) => ({ entry, place: luck.next().value }))
        .sort((a, b) => a.place - b.place)
        .map(({ entry }) => entry);
      expect(foldBooks(shuffled)).toEqual(foldBooks(entries));
    }),
  );
});

test('an undone booking is as if it had never been, and months close in their order', () => {
  fc.assert(
    fc.property(story, booked, (happenings, extra) => {
      const without = foldBooks(written(happenings.filter((one) => one !== 'undo')));
      const taken = foldBooks(written([...happenings.filter((one) => one !== 'undo'), extra, 'undo']));
      // But for the list of what was undone, from which it can be brought back.
      expect({ ...taken, undone: [] }).toEqual(without);
      const months = without.closes.map(({ month }) => month);
      expect(months).toEqual([...new Set(months)].sort());
    }),
  );
});

test('a bill, a check and an invoice keep their numbers, each line its own where it has one', () => {
  const lot = THERE.lot;
  const date = '2026-11-30' as never;
  const line = { lot, cost: 'transport', label: 'Haul', cents: 780_00 as never } as const;
  const books = foldBooks(
    written([
      { kind: 'costs-booked', date, paid: 'owed', document: { number: 'B-17', file: 'bill.pdf' }, lines: [line, line] },
      {
        kind: 'payment-booked',
        date,
        document: { number: 'check 2041' },
        lines: [{ lot, cents: 780_00 as never }],
      },
      { kind: 'floor-booked', lot, move: 'draw', cents: 900_00 as never, date, document: { number: 'draw 9' } },
      {
        kind: 'invoice-confirmed',
        venueId: 'saguaro',
        document: { number: 'INV-1', file: 'invoice.csv' },
        costs: [
          { ...line, date, number: 'INV-1/3' },
          { ...line, date },
        ],
        payments: [
          { lot, cents: 5_00 as never, date, number: 'INV-1/P' },
          { lot, cents: 6_00 as never, date },
        ],
      },
    ]),
  );
  const bill = { number: 'B-17', file: 'bill.pdf' };
  const invoice = (number: string) => ({ number, file: 'invoice.csv' });
  expect(books.costs.map(({ document }) => document)).toEqual([bill, bill, invoice('INV-1/3'), invoice('INV-1')]);
  expect(books.payments.map(({ document }) => document)).toEqual([
    { number: 'check 2041' },
    invoice('INV-1/P'),
    invoice('INV-1'),
  ]);
  expect(books.floor.map(({ document }) => document)).toEqual([{ number: 'draw 9' }]);
  // Lines of one bill are told apart by their keys.
  expect(new Set(books.costs.map(({ key }) => key)).size).toBe(4);
});
