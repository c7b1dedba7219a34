import { parse } from 'csv-parse/sync';
import Decimal from 'decimal.js';
import { beforeEach, expect, test } from 'vitest';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { booksToCsv } from '../../../src/intake/books/books-to-csv.ts';
import { RESULT_COLUMNS } from '../../../src/intake/books/result-columns.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { resultOut } from '../../../src/views/books/result-out.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';

const BOISE = zone('America/Boise');
/** In Boise it is still Monday. */
const ENDED = instant(Date.parse('2026-12-01T03:00:00Z'));

beforeEach(freshBrowser);

test('results go out with their outcomes: an independent reader adds up to the cent what was left under the max bid', async () => {
  const store = await openTestStore();
  const note = async (number: string, result: Result, maxBid?: number) => {
    const facts = lotFactsSchema.parse({ make: 'Larkspur', lotNumber: number, venueName: 'Saguaro Sale Yard' });
    const lot = at(value(await store.addLots('typed', [{ facts }])).lots, 0);
    const bid = { action: 'proxy-placed', cents: cents(500_000), at: ENDED, plannedCents: cents(777_700) } as const;
    value(await store.noteBid(lot, bid));
    const max = maxBid === undefined ? {} : { maxBidCents: cents(maxBid) };
    value(await store.noteResult(lot, { result, at: ENDED, bidder: 'The buyer', ...max }));
    return lot;
  };
  const won = await note('007', { ended: 'won', hammerCents: cents(812_345) }, 900_010);
  const canceled = await note('8', { ended: 'won', hammerCents: cents(600_000) }, 700_000);
  await note('9', { ended: 'lost', hammerCents: cents(1_000_001) }, 900_000);
  await note('10', { ended: 'lost' }, 900_000);
  await note('11', { ended: 'not-sold', highCents: cents(450_050) }, 400_000);
  await note('12', { ended: 'withdrawn' });
  const bill = { date: '2026-12-02' as LocalDate, paid: 'owed', payee: 'Saguaro Sale Yard' } as const;
  value(
    await store.book(
      {
        ...{ kind: 'costs-booked', ...bill, document: { number: '0042' } },
        lines: [
          { lot: won, cost: 'hammer', label: 'Price', cents: cents(812_345) },
          { lot: won, cost: 'fee', label: 'Buy fee', cents: cents(45_099) },
        ],
      },
      { kind: 'payment-booked', date: bill.date, document: { number: '1042' }, lines: [{ lot: won, cents: cents(1) }] },
    ),
  );
  const words = { side: 'ours', reason: 'hidden-defect', words: 'A noise', at: ENDED, needs: [] } as const;
  const about = (happening: object) => [{ subject: subjectOfLot(canceled), happening: happening as never }];
  const opened = value(await store.append(about({ kind: 'dispute-opened', opened: words })));
  const closed = { ended: 'sale-undone', at: ENDED };
  value(await store.append(about({ kind: 'dispute-closed', dispute: at(opened, 0).id, outcome: closed })));

  const lots = await store.allLots();
  const { folders } = foldersOf(lots, await store.books(), new Map(), startingSetup(BOISE), '2026-12-03' as LocalDate);
  const byLot = new Map(folders.map((folder) => [folder.lot, folder]));
  const csv = booksToCsv(
    RESULT_COLUMNS,
    lots.flatMap((lot) => resultOut(lot, byLot.get(lot.id), BOISE) ?? []),
  );
  const rows: Record<string, string>[] = parse(csv, { bom: true, columns: true });
  const pick = (...names: string[]) => rows.map((row) => names.map((name) => row[name]).join('|'));
  expect(pick('Result', 'Ended on')).toEqual(
    ['won', 'sale canceled', 'lost', 'lost', 'not sold', 'withdrawn'].map((ended) => `${ended}|2026-11-30`),
  );
  expect(pick('Final price', 'Hammer', 'All-in', 'High bid')).toEqual([
    '8123.45|8123.45|8574.44|',
    '6000.00|6000.00||',
    '10000.01|||',
    '|||',
    '|||4500.50',
    '|||',
  ]);
  expect(at(rows, 0)).toMatchObject({
    ...{ 'Lot number': "'007", 'Planned bid': '7777.00', 'Your bid': '5000.00', 'Bid by': 'The buyer' },
    ...{ 'Bill numbers': "'0042", 'Check numbers': '1042' },
  });
  expect(at(rows, 1)['Canceled on']).toBe('2026-11-30');
  // Recomputed from the other columns of the file alone.
  for (const row of rows) {
    const { 'Final price': price, 'Max bid': max, 'Canceled on': gone } = row;
    const left = price && max && !gone ? new Decimal(max).minus(price).toFixed(2) : '';
    expect(row['Left under max']).toBe(left);
  }
  expect(rows.reduce((sum, row) => sum.plus(row['Left under max'] || 0), new Decimal(0)).toFixed(2)).toBe('-123.36');
});
