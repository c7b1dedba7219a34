import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensureJournalTool } from '../../scripts/ensure-journal-tool.ts';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { STARTING_BOOKKEEPING } from '../../src/domain/accounts/accounts.ts';
import type { Month } from '../../src/domain/books/month.ts';
import { balances, toClose } from '../../src/domain/books/post/post-months.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { startingSetup } from '../../src/domain/setup/starting-setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';
import { foldersOf } from '../../src/views/books/folders-of.ts';
import { postedBooks } from '../../src/views/books/posted-books.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../store/open-test-store.ts';

// A program in another language that shares nothing with this one but the backup file. Python comes with beancount.
const LOTS = 60;
const SETUP = startingSetup(zone('America/Boise'));
/** Before any month's end, so that nothing is accrued. */
const NEVER = '2000-01' as Month;
let folder = '';

beforeAll(() => {
  ensureJournalTool('bean-check');
  folder = temporaryFolder();
}, 300_000);
afterAll(() => removeFolder(folder));

const day = (n: number) => `2026-10-${String(1 + (n % 28)).padStart(2, '0')}` as LocalDate;
const moment = (n: number) => instant(Date.parse(`${day(n)}T20:00:00Z`));

/** Bills paid at once and owed, invoices, payments, the lender, sales, cancellations, corrections, undos and their undos. */
async function keepBooks(store: Store): Promise<void> {
  const added = await store.addLots(
    'typed',
    Array.from({ length: LOTS }, (_, n) => ({ facts: { lotNumber: String(n), venueName: 'Saguaro Sale Yard' } })),
  );
  for (const [n, lot] of value(added).lots.entries()) await keepCar(store, lot, n);
}

async function keepCar(store: Store, lot: LotId, n: number): Promise<void> {
  const hammer = cents(700_000 + 1_357 * n);
  value(await store.noteResult(lot, { result: { ended: 'won', hammerCents: hammer }, at: moment(n) }));
  const price = { lot, cost: 'hammer', label: 'Price', cents: hammer } as const;
  const fee = { lot, cost: 'fee', label: 'Buy fee', cents: cents(40_000 + n) } as const;
  const payee = n % 4 === 0 ? {} : { payee: 'Saguaro Sale Yard' };
  const billed = await (n % 2 === 0
    ? store.book({
        kind: 'costs-booked',
        date: day(n),
        paid: n % 3 === 0 ? 'bank' : 'owed',
        ...payee,
        lines: [price, fee],
      })
    : store.book({
        ...{ kind: 'invoice-confirmed', venueId: '', ...payee, document: { file: 'statement.csv' } },
        costs: [price, fee].map((line) => ({ ...line, date: day(n) })),
        payments: n % 5 === 0 ? [{ lot, cents: cents(100_000), date: day(n) }] : [],
      }));
  const bill = at(value(billed), 0).id;
  const more = [
    { lot, cost: 'transport', label: 'Freight', cents: cents(55_000 + 7 * n) },
    { lot, cost: n % 6 === 0 ? 'interest' : 'recon', label: 'Work', cents: cents(12_345 + n) },
    { lot, cost: 'other', label: 'A credit', cents: cents(-2_500) },
  ] as const;
  const late = await store.book({
    kind: 'costs-booked',
    date: day(n + 9),
    paid: 'bank',
    payee: 'A shop',
    lines: [...more],
  });
  const paid = await store.book({
    kind: 'payment-booked',
    date: day(n + 3),
    ...payee,
    lines: [{ lot, cents: cents(300_000 + n) }],
  });
  if (n % 3 === 1)
    value(await store.book({ kind: 'floor-booked', lot, move: 'draw', cents: cents(250_000), date: day(n + 1) }));
  if (n % 6 === 1)
    value(await store.book({ kind: 'floor-booked', lot, move: 'payoff', cents: cents(200_000), date: day(n + 8) }));
  if (n % 2 === 0) {
    const buyer = (['retail', 'wholesale', 'business'] as const)[n % 3] ?? 'retail';
    value(await store.book({ kind: 'outcome-booked', lot, date: day(n + 5), priceCents: cents(990_000 + n), buyer }));
  }
  if (n % 7 === 0)
    value(
      await store.book({ kind: 'line-corrected', lot, line: `${bill}/1`, to: { cents: cents(39_999), date: day(n) } }),
    );
  if (n % 11 === 0)
    value(await store.book({ kind: 'line-corrected', lot, line: `${at(value(late), 0).id}/0`, to: null }));
  if (n % 5 === 0) {
    const undone = value(await store.undo(at(value(paid), 0).id));
    if (n % 10 === 0) value(await store.undo(at(undone, 0).id));
  }
  if (n % 9 === 4) {
    const opened = { side: 'ours', reason: 'hidden-defect', words: 'A noise', at: moment(n), needs: [] } as const;
    const about = (happening: object) => [{ subject: subjectOfLot(lot), happening: happening as never }];
    const dispute = at(value(await store.append(about({ kind: 'dispute-opened', opened }))), 0).id;
    const outcome = { ended: n % 2 === 0 ? 'sale-undone' : 'sold-again', at: moment(n + 4) };
    value(await store.append(about({ kind: 'dispute-closed', dispute, outcome })));
  }
}

async function ours(store: Store) {
  const [lots, state] = [await store.allLots(), await store.books()];
  const folders = foldersOf(lots, state, new Map(), SETUP, day(27));
  return postedBooks(folders, state, STARTING_BOOKKEEPING, NEVER);
}

async function theirs(store: Store): Promise<unknown> {
  const file = path.join(folder, 'books.backup');
  writeFileSync(file, new Uint8Array(await (await store.backup()).blob.arrayBuffer()));
  return JSON.parse(execFileSync('python3', ['tests/reference/recompute-books.py', file], { encoding: 'utf8' }));
}

test('a program in another language comes to the same balances from the journal, also after a month was closed and changed', async () => {
  freshBrowser();
  const store = await openTestStore({ channel: false });
  await keepBooks(store);
  const before = await ours(store);
  const balanced = Object.fromEntries(balances(before.transactions));
  expect(Object.keys(balanced).length).toBeGreaterThan(7);
  expect(await theirs(store)).toEqual(balanced);

  const october = '2026-10' as Month;
  const transactions = toClose(before, october);
  value(await store.book({ kind: 'month-closed', month: october, by: 'The bookkeeper', transactions }));
  const lot = at(await store.allLots(), 2).id;
  const line = { lot, cost: 'fee', label: 'Storage', cents: cents(6_001) } as const;
  value(await store.book({ kind: 'costs-booked', date: day(3), paid: 'owed', lines: [line] }));
  const after = await ours(store);
  expect(after.transactions.some(({ corrects }) => corrects === october)).toBe(true);
  expect(await theirs(store)).toEqual(Object.fromEntries(balances(after.transactions)));
});
