import { type LocalDate, localDateSchema } from '../time/local-date.ts';

/** The date, if there is one. */
export function calendarDate(year: number, month: number, day: number): readonly LocalDate[] {
  const two = (part: number) => String(part).padStart(2, '0');
  const date = localDateSchema.safeParse(`${year}-${two(month)}-${two(day)}`);
  return date.success ? [date.data] : [];
}
