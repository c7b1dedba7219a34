import type { ScreenCounts } from '../../src/views/counts/screen-counts.ts';
import type { Route } from './route.ts';

/** A place that one can go to from everywhere, and the screens that belong to it. */
export interface Place {
  readonly hash: string;
  readonly label: string;
  readonly screens: readonly Route['screen'][];
  /** Whose count stands beside it. */
  readonly counts?: keyof ScreenCounts;
}

/** Places of one kind of work. */
export interface PlaceGroup {
  readonly name: string;
  readonly places: readonly Place[];
}

/** Where one goes every day, at most four places for each: the buyer, the manager after him, the bookkeeper. */
export const DAILY: readonly PlaceGroup[] = [
  {
    name: 'Buying',
    places: [
      { hash: '#/lots', label: 'Lots', screens: ['lots', 'lot', 'history'] },
      { hash: '#/plan', label: 'Plan', screens: ['plan'] },
      { hash: '#/week', label: 'Week', screens: ['week'] },
      { hash: '#/now', label: 'Now', screens: ['now'] },
    ],
  },
  {
    name: 'After the sale',
    places: [
      { hash: '#/results', label: 'Results', screens: ['results'], counts: 'results' },
      { hash: '#/todo', label: 'To do', screens: ['todo', 'won'], counts: 'todo' },
      { hash: '#/disputes', label: 'Disputes', screens: ['disputes', 'dispute', 'open-dispute'] },
    ],
  },
  {
    name: 'Bookkeeping',
    places: [
      { hash: '#/books/monday', label: 'Books', screens: ['books'], counts: 'books' },
      { hash: '#/learn', label: 'Learn', screens: ['learn'] },
    ],
  },
];

/** Where one goes now and then. They stand apart, so that the days' own row stays short. */
export const TOOLS: PlaceGroup = {
  name: 'Tools',
  places: [
    { hash: '#/add', label: 'Add lots', screens: ['add'] },
    { hash: '#/setup', label: 'Setup', screens: ['setup'] },
    { hash: '#/backup', label: 'Backup', screens: ['backup'] },
    { hash: '#/words', label: 'Words', screens: ['words'] },
  ],
};
