import { expect, test } from 'vitest';
import { bidWords } from '../../../src/domain/bid/bid-words.ts';
import { reviewGroup } from '../../../src/domain/books/review/review-groups.ts';
import { totalResults } from '../../../src/domain/sale/result-totals.ts';
import { sayEnd } from '../../../src/domain/sale/result-words.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { EMPTY_BOOKS } from '../../../src/folds/fold-books.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { reviewLots } from '../../../src/views/books/review-lots.ts';
import { bidsUnder } from '../../../src/views/lots/bids.ts';
import { rowsUnder } from '../../../src/views/results/result-row.ts';
import { FIRST_VIEW, groupsOf, rowsInView } from '../../../src/views/results/result-view.ts';
import { sayReview } from '../../../src/views/results/review-words.ts';
import { type BidEvent, BidHistory, BOISE, dollars } from '../lots/bid-history.ts';

const setup = startingSetup(BOISE);
const CLOSE = '2026-06-06T14:00:00-06:00';
const added: BidEvent = { at: '2026-06-04T09:00:00-06:00', kind: 'lot-added', close: CLOSE, increment: 100 };
const won: BidEvent = {
  at: '2026-06-06T14:02:00-06:00',
  kind: 'result',
  outcome: 'won',
  amount: 10_900,
  by: 'manager',
};
const canceled: BidEvent = { at: '2026-06-08T09:30:00-06:00', kind: 'result', outcome: 'canceled' };

function told(...events: readonly BidEvent[]) {
  const history = new BidHistory([added, ...events]);
  const { lot } = history;
  const rows = [rowsUnder(setup)(lot)].flatMap((row) => row ?? []);
  const { folders } = foldersOf([lot], EMPTY_BOOKS, new Map(), setup, '2026-06-09' as LocalDate);
  const review = reviewLots([lot], folders, BOISE);
  return { lot, rows, folders, group: reviewGroup('all', review), totals: totalResults(rows), history };
}

test('a canceled sale is told the same in the list, in Results, in Review and in Books, and counts as won in none', () => {
  const { lot, rows, folders, group, totals, history } = told(won, canceled);
  const words = 'Sale canceled, was won at $10,900';
  expect(bidWords(bidsUnder(setup, history.standingOf).at(lot, Date.parse('2026-06-09T12:00:00Z')))).toBe(words);
  expect(rows.map((row) => [sayEnd(row.result, row.canceled), sayReview(row)])).toEqual([[words, '']]);
  expect(totals).toMatchObject({ count: 1, won: 0, canceled: 1, hammer: 0 });
  expect(groupsOf(rows, 'outcome').map(({ label }) => label)).toEqual(['Sale canceled']);
  expect(rowsInView(rows, { ...FIRST_VIEW, outcome: 'won' })).toEqual([]);
  expect(rowsInView(rows, { ...FIRST_VIEW, outcome: 'canceled' })).toEqual(rows);
  expect(folders.map(({ stage }) => stage)).toEqual(['undone']);
  expect(group).toMatchObject({ won: 0, canceled: 1, hammer: 0, allIn: 0, tiedUp: 0, winRate: null });
});

test('a win whose bills have not come has a hammer price and no all-in cost: the two are never added up', () => {
  const { group, totals } = told(won);
  expect(totals).toMatchObject({ won: 1, canceled: 0, hammer: dollars(10_900) });
  expect(group).toMatchObject({ won: 1, hammer: dollars(10_900), allIn: 0, billed: 0, tiedUp: 0, tiedUpUnknown: 1 });
});
