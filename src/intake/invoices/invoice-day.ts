import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { type LocalDate, type LocalTime, localDateSchema } from '../../domain/time/local-date.ts';
import { writtenDate } from '../../domain/time/written-date.ts';
import { serialToText } from '../rows/spreadsheet-serial.ts';

/** A day of an invoice; absent where the cell says none. */
export interface InvoiceDay {
  readonly date?: LocalDate | undefined;
  readonly dayDoubt?: 'year-guessed' | 'to-come' | undefined;
}

const TIME_BEHIND = /[T ]\d{1,2}:\d\d(?::\d\d)?(?:\.\d+)?(?: ?[AP]M)?(?:Z| ?[A-Z]{2,4})?$/i;
const FIGURES = /^(\d{1,2})([-/.])(\d{1,2})(\2(?:\d{4}|\d\d))?$/;
const HAS_YEAR =
  /\d{4}|^\d{1,2}([-/.])\d{1,2}\1\d\d$|\d[ ,-]*[a-z]+\.?[ ,-]*\d\d$|[a-z]\.? ?\d{1,2},? +\d\d$|['’]\d\d$/i;

/**
 * Reads the day of a bill. Bills are about what has happened, so a day without a year is the nearest one past.
 * @param dayFirst that the file writes the day before the month
 */
export function readInvoiceDay(text: string, today: LocalDate, dayFirst: boolean): Outcome<InvoiceDay> {
  if (text === '') return ok({});
  const day = serialToText(text.replace(TIME_BEHIND, ''));
  const figures = FIGURES.exec(day);
  const turned = dayFirst && figures !== null ? `${figures[3]}${figures[2]}${figures[1]}${figures[4] ?? ''}` : day;
  const date = writtenDate(turned, '23:59' as LocalTime, { date: today, time: '00:00' as LocalTime });
  if (!date.ok) return date;
  if (HAS_YEAR.test(day)) return ok({ date: date.value, ...(date.value > today && { dayDoubt: 'to-come' as const }) });
  if (date.value <= today) return ok({ date: date.value, dayDoubt: 'year-guessed' });
  const before = localDateSchema.safeParse(`${Number(date.value.slice(0, 4)) - 1}${date.value.slice(4)}`);
  if (!before.success || !/\d/.test(day))
    return refuse(
      'which-year',
      `“${text.trim()}” has no year, and the nearest such day is still to come. Write its year.`,
    );
  return ok({ date: before.data, dayDoubt: 'year-guessed' });
}

/** Whether the days of a column prove that the day stands before the month: one of them is above 12, and none says otherwise. */
export function isDayFirst(cells: readonly string[]): boolean {
  const pairs = cells.flatMap((cell) => {
    const match = FIGURES.exec(cell.trim());
    return match === null ? [] : [[Number(match[1]), Number(match[3])] as const];
  });
  return pairs.some(([one]) => one > 12) && !pairs.some(([, two]) => two > 12);
}
