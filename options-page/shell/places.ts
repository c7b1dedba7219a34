import { addressOf, type GroupName, SCREEN_ROWS, type ScreenName, type ScreenRow } from './screens.ts';

/** A place that one can go to from everywhere, and the screens that belong to it. */
export interface Place {
  readonly hash: string;
  readonly label: string;
  readonly screens: readonly ScreenName[];
  /** Whose count stands beside it. */
  readonly counts: ScreenRow['counts'];
}

/** Places of one kind of work. */
export interface PlaceGroup {
  readonly name: GroupName;
  /** What opens it where only the groups fit. */
  readonly short: string;
  readonly places: readonly Place[];
}

const SHORT: Readonly<Record<GroupName, string>> = {
  Buying: 'Buying',
  'After the sale': 'After sale',
  Bookkeeping: 'Books',
  Tools: 'Tools',
};

/** Where one goes: the buyer, the manager after him, the bookkeeper, and what is needed now and then. */
export const GROUPS: readonly PlaceGroup[] = Object.entries(SHORT).map(([name, short]) => ({
  name: name as GroupName,
  short,
  places: SCREEN_ROWS.filter(([, row]) => row.group === name).map(([screen, { title, parts, counts }]) => ({
    hash: addressOf(screen, parts?.[0]?.part),
    label: title,
    screens: [screen, ...SCREEN_ROWS.filter(([, { under }]) => under === screen).map(([below]) => below)],
    counts,
  })),
}));
