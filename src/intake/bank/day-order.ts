import { type LocalDate, localDateSchema } from '../../domain/time/local-date.ts';

/** How days in figures are written, when the year does not stand first. */
export type DayOrder = 'month-first' | 'day-first';

const FIGURES = /^(\d{1,2})([-/.])(\d{1,2})(?:\2(\d{4}|\d\d))?(?=$|[ T])/;
const WORDS = /^(?:[a-z]{3,9},? )?(?:\d{1,2}[ -]?[a-z]{3,9}|[a-z]{3,9}[ -]?\d{1,2}(?!\d))/i;

/** Whether a cell may be a day; not whether there is such a day. */
export const looksLikeDay = (cell: string): boolean => {
  const text = cell.trim();
  return (
    FIGURES.test(text) ||
    /^\d{4}[-/.]?\d\d[-/.]?\d\d(?!\d)/.test(text) ||
    (text.length < 30 && /\d/.test(text) && WORDS.test(text))
  );
};

/**
 * The order of the days of a column: one figure above 12 proves it. Else the order in which a statement's days follow each
 * other does, or a day that would be still to come. Null: both are possible, and somebody has to say.
 */
export function dayOrder(cells: readonly string[], today: LocalDate): DayOrder | null {
  const pairs = cells.flatMap((cell) => {
    const match = FIGURES.exec(cell.trim());
    const [one, two] = [Number(match?.[1]), Number(match?.[3])];
    // No such day, in whichever order: it says nothing about the others.
    return match === null || Math.min(one, two) > 12 ? [] : [{ one, two, year: match[4] }];
  });
  if (pairs.every(({ one, two }) => one === two)) return 'month-first';
  const [dayFirst, monthFirst] = [pairs.some(({ one }) => one > 12), pairs.some(({ two }) => two > 12)];
  if (dayFirst !== monthFirst) return dayFirst ? 'day-first' : 'month-first';
  if (dayFirst) return null;
  const read = (order: DayOrder) =>
    pairs.map(({ one, two, year = today.slice(0, 4) }) => {
      const [month, day] = order === 'month-first' ? [one, two] : [two, one];
      return `${year.length === 2 ? `20${year}` : year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
    });
  const likely = (days: readonly string[], years: boolean) =>
    isInOrder(days) && days.every((day) => localDateSchema.safeParse(day).success && (!years || day <= today));
  const years = pairs.every(({ year }) => year !== undefined);
  const [month, day] = [likely(read('month-first'), years), likely(read('day-first'), years)];
  if (month === day) return null;
  return month ? 'month-first' : 'day-first';
}

const isInOrder = (days: readonly string[]): boolean =>
  days.every((day, i) => i === 0 || day >= (days[i - 1] ?? '')) ||
  days.every((day, i) => i === 0 || day <= (days[i - 1] ?? ''));

/** Figures of a day, month first, as they are read further. */
export const monthFirst = (cell: string, order: DayOrder): string =>
  order === 'month-first'
    ? cell
    : cell
        .trim()
        .replace(
          FIGURES,
          (_, day, mark, month, year) => `${month}${mark}${day}${year === undefined ? '' : `${mark}${year}`}`,
        );
