import type { ScreenCounts } from '../../src/views/counts/screen-counts.ts';
import { BOOKS_PARTS } from '../books/books-parts.ts';
import { LEARN_PARTS } from '../learn/learn-parts.ts';
import { PART_TITLES } from '../setup/part-titles.ts';
import type { Route } from './route.ts';

export type ScreenName = Route['screen'];

/** Kinds of work: each is one group of the navigation. */
export type GroupName = 'Buying' | 'After the sale' | 'Bookkeeping' | 'Tools';

/** A part of a screen: what follows the screen in the address, and its word. */
export interface ScreenPart {
  /** With a colon, such as `:lot`, it stands for what only the data knows. */
  readonly part: string;
  /** Empty where the screen's own title says it. */
  readonly label: string;
}

export interface ScreenRow {
  /** The word in the navigation, and what titles the window and every printed page. */
  readonly title: string;
  /** The group in which it has a place. */
  readonly group?: GroupName;
  /** Without a place of its own: the screen whose place is marked meanwhile. */
  readonly under?: ScreenName;
  /** Whose count stands beside it. */
  readonly counts?: keyof ScreenCounts;
  /** The first one is where its place leads. */
  readonly parts?: readonly ScreenPart[];
}

/** A screen that is about one lot or one dispute. */
const OF_ONE: readonly [{ part: ':id'; label: '' }] = [{ part: ':id', label: '' }];

/**
 * All screens. Navigation, window titles, the heads of printed pages, the tests that go through every screen and the demo's
 * pictures follow from this table; a route without a row does not compile.
 */
export const SCREENS = {
  lots: { title: 'Lots', group: 'Buying' },
  lot: { title: 'Worksheet', under: 'lots', parts: OF_ONE },
  history: { title: 'Full history', under: 'lots', parts: OF_ONE },
  plan: { title: 'Plan', group: 'Buying' },
  week: {
    title: 'Week',
    group: 'Buying',
    parts: [
      { part: '', label: '' },
      { part: ':date', label: 'Day' },
    ],
  },
  now: { title: 'Now', group: 'Buying' },
  results: {
    title: 'Results',
    group: 'After the sale',
    counts: 'results',
    parts: [
      { part: '', label: '' },
      { part: 'missing', label: 'Without a result' },
    ],
  },
  todo: { title: 'To do', group: 'After the sale', counts: 'todo' },
  won: { title: 'After the sale', under: 'todo', parts: OF_ONE },
  disputes: { title: 'Disputes', group: 'After the sale' },
  dispute: { title: 'Dispute', under: 'disputes', parts: OF_ONE },
  'open-dispute': { title: 'Open a dispute', under: 'disputes' },
  books: { title: 'Books', group: 'Bookkeeping', counts: 'books', parts: BOOKS_PARTS },
  learn: { title: 'Learn', group: 'Bookkeeping', parts: LEARN_PARTS },
  add: { title: 'Add lots', group: 'Tools' },
  setup: { title: 'Setup', group: 'Tools', parts: PART_TITLES },
  backup: { title: 'Backup', group: 'Tools' },
  team: { title: 'Team', group: 'Tools' },
  words: {
    title: 'Words',
    group: 'Tools',
    parts: [
      { part: '', label: '' },
      { part: ':term', label: '' },
    ],
  },
  start: { title: 'Start here' },
  'demo-load': { title: 'Demo' },
  unknown: { title: 'Not found' },
} as const satisfies Record<ScreenName, ScreenRow>;

/** The same, to be gone over. */
export const SCREEN_ROWS = Object.entries(SCREENS) as readonly (readonly [ScreenName, ScreenRow])[];

/** Where a part of a screen is: `#/books/month`. */
export const addressOf = (screen: string, part = ''): string => `#/${screen}${part && `/${part}`}`;
