import * as z from 'zod/mini';

/** A calendar date with no zone, `YYYY-MM-DD`. Sorts as text. */
export const localDateSchema = z.iso.date().check(z.describe('a calendar date, YYYY-MM-DD')).brand<'LocalDate'>();
export type LocalDate = z.infer<typeof localDateSchema>;

/** A time of day on a wall clock, `HH:MM`, 24 hours. */
export const localTimeSchema = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/), z.describe('a time of day, HH:MM on a 24-hour clock'))
  .brand<'LocalTime'>();
export type LocalTime = z.infer<typeof localTimeSchema>;
