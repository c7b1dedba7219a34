import { addressOf, SCREEN_ROWS, type SCREENS, type ScreenName } from '../options-page/shell/screens.ts';
import { comingSaturday } from '../src/demo/demo-closes.ts';
import type { Instant } from '../src/domain/time/instant.ts';

/** A screen, or a part of one, with the demo's week in it: for tests and pictures that go through all of them. */
export interface ScreenVisit {
  /** Names it in file names and messages: "books-month". */
  readonly name: string;
  readonly hash: string;
  /** The links that lead on to it, by their CSS, where only the data knows its address. */
  readonly follow: readonly string[];
}

type Rows = typeof SCREENS;
type PartIn<Name extends ScreenName> = Rows[Name] extends { readonly parts: readonly { readonly part: infer Part }[] }
  ? Extract<Part, `:${string}`>
  : never;
/** Each part whose address only the data knows, such as `books/:lot`. */
type Led = { [Name in ScreenName]: PartIn<Name> extends never ? never : `${Name}/${PartIn<Name>}` }[ScreenName];

const WORKSHEET = '.lot-row:has(.lot-figure) .lot-name';

/** How one gets there. */
const LED: Readonly<Record<Led, ScreenVisit>> = {
  'lot/:id': { name: 'worksheet', hash: '#/lots', follow: [WORKSHEET] },
  'history/:id': {
    name: 'history',
    hash: '#/disputes',
    follow: ['main a[href^="#/dispute/"]', 'main a[href^="#/history/"]'],
  },
  'week/:date': { name: 'day', hash: '#/week/FULL_DAY', follow: [] },
  'won/:id': { name: 'won', hash: '#/todo', follow: ['main a[href^="#/won/"]'] },
  'dispute/:id': { name: 'dispute', hash: '#/disputes', follow: ['main a[href^="#/dispute/"]'] },
  'books/:lot': { name: 'books-folder', hash: '#/books', follow: ['main a[href^="#/books/0"]'] },
  'words/:term': { name: 'words-term', hash: '#/words/max-bid', follow: [] },
};

/** It fills an empty journal and goes on to the list, before anybody could look. */
const PASSING: ReadonlySet<ScreenName> = new Set(['demo-load']);

/** Every screen of the table and every part of each, in its order; the day is the one on which most lots of the demo close. */
export function screenVisits(now: Instant): readonly ScreenVisit[] {
  const there = SCREEN_ROWS.filter(([screen]) => !PASSING.has(screen));
  return there.flatMap(([screen, { parts = [{ part: '', label: '' }] }]) =>
    parts.map(({ part }): ScreenVisit => {
      const visit = LED[`${screen}/${part}` as Led] ?? {
        name: part === '' ? screen : `${screen}-${part}`,
        hash: addressOf(screen, part),
        follow: [],
      };
      return { ...visit, hash: visit.hash.replace('FULL_DAY', comingSaturday(now)) };
    }),
  );
}
