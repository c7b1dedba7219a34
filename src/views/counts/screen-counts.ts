import { dueAt } from '../../domain/after-sale/due.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { AfterLot } from '../after-sale/after-lot.ts';
import type { MondayGroup } from '../books/monday-list.ts';
import { isOpenClosing } from '../results/open-closings.ts';

/** How much waits on a screen, as its link in the navigation shows it. */
export interface CountMark {
  readonly count: number;
  /** Short enough to stand beside a word: "3", "99+", and "3!" when it presses. */
  readonly figure: string;
  /** The same in words: "3 without a result". */
  readonly words: string;
  /** Whether some of it is overdue. */
  readonly presses: boolean;
}

/** What waits, by screen; a screen on which nothing waits has no mark. */
export type ScreenCounts = Readonly<Partial<Record<'results' | 'todo' | 'books', CountMark>>>;

/** A number with three digits is as wide as a word, and tells nobody more than that there is a lot. */
const MOST = 99;

/**
 * What waits at a moment, on the same terms as the screens themselves list it.
 * @param watched every lot that is not dropped
 * @param after every lot that was won or disputed, dropped ones too
 * @param monday the bookkeeper's list
 */
export function screenCounts(
  watched: readonly LotState[],
  after: readonly Pick<AfterLot, 'toDos'>[],
  monday: readonly MondayGroup[],
  now: Instant,
): ScreenCounts {
  const missing = watched.reduce((count, lot) => count + (isOpenClosing(lot, now) ? 1 : 0), 0);
  const toDos = after.flatMap((lot) => lot.toDos);
  const overdue = toDos.filter(({ due }) => (dueAt(due) ?? Number.POSITIVE_INFINITY) < now).length;
  const open = `${inFull(toDos.length)} open`;
  const lines = monday.flatMap((group) => group.lines);
  const late = lines.some((line) => line.late);
  return {
    ...(lines.length > 0 && { books: mark(lines.length, `${inFull(lines.length)} to settle`, late) }),
    ...(missing > 0 && { results: mark(missing, `${inFull(missing)} without a result`, false) }),
    ...(toDos.length > 0 && {
      todo: mark(toDos.length, overdue > 0 ? `${open}, ${inFull(overdue)} overdue` : open, overdue > 0),
    }),
  };
}

/** What waits on several screens together; undefined where nothing does. */
export function countsTogether(marks: readonly CountMark[]): CountMark | undefined {
  if (marks.length === 0) return undefined;
  const sum = marks.reduce((total, { count }) => total + count, 0);
  return mark(
    sum,
    marks.map(({ words }) => words).join('; '),
    marks.some(({ presses }) => presses),
  );
}

function mark(count: number, words: string, presses: boolean): CountMark {
  return { count, figure: `${count > MOST ? `${MOST}+` : count}${presses ? '!' : ''}`, words, presses };
}

const inFull = (count: number) => count.toLocaleString('en-US');
