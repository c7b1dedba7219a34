import type { ResultOut } from '../../views/books/result-out.ts';
import { carColumns, date, money, numbersOf, type OutColumn, text } from './books-columns.ts';

/** Max bid less the final price; below zero where it went over. Of a canceled sale there is none. */
const leftUnderMax = ({ finalPrice, maxBid, canceledOn }: ResultOut): number | null =>
  finalPrice === null || maxBid === null || canceledOn !== undefined ? null : maxBid - finalPrice;

/** One row a lot with a result, won or not. */
export const RESULT_COLUMNS: readonly OutColumn<ResultOut>[] = [
  ...carColumns<ResultOut>(({ facts }) => facts),
  { heading: 'Ended on', means: 'Day in the store’s zone, year-month-day.', cell: ({ day }) => date(day) },
  {
    heading: 'Result',
    means: 'won, lost, not sold, pending, withdrawn, unknown, or sale canceled.',
    cell: ({ ended }) => text(ended),
  },
  { heading: 'Bid by', means: 'Who bid, else who entered the result.', cell: ({ buyer }) => text(buyer) },
  {
    heading: 'Final price',
    means: 'Hammer price of a lot that was won or lost, dollars; empty where it is not known.',
    cell: ({ finalPrice }) => money(finalPrice),
  },
  {
    heading: 'High bid',
    means: 'Highest bid on a lot that did not sell, dollars.',
    cell: ({ highBid }) => money(highBid),
  },
  {
    heading: 'Max bid',
    means: 'Yours when it ended, dollars; empty where none was known or no price worked.',
    cell: ({ maxBid }) => money(maxBid),
  },
  {
    heading: 'Planned bid',
    means: 'What the plan bid, dollars; empty without a plan.',
    cell: ({ plannedBid }) => money(plannedBid),
  },
  { heading: 'Your bid', means: 'The last one recorded, dollars.', cell: ({ ourBid }) => money(ourBid) },
  {
    heading: 'Left under max',
    means: 'Max bid less the final price, dollars; below zero where it went over. Empty for a canceled sale.',
    cell: (row) => money(leftUnderMax(row)),
  },
  {
    heading: 'Hammer',
    means: 'What you bought it for, dollars, also where the sale was canceled.',
    cell: ({ hammer }) => money(hammer),
  },
  {
    heading: 'All-in',
    means: 'Every bill for it so far, dollars; empty until its price is billed, and for a canceled sale.',
    cell: ({ allIn }) => money(allIn),
  },
  { heading: 'Canceled on', means: 'Day on which the sale was canceled.', cell: ({ canceledOn }) => date(canceledOn) },
  { heading: 'Sold on', means: 'Day on which you sold the car.', cell: ({ soldOn }) => date(soldOn) },
  { heading: 'Bill numbers', means: 'As printed.', cell: ({ bills }) => text(numbersOf(bills)) },
  { heading: 'Check numbers', means: 'Of checks and transfers.', cell: ({ checks }) => text(numbersOf(checks)) },
];
