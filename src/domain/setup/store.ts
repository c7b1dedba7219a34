import * as z from 'zod/mini';
import { localDateSchema, localTimeSchema } from '../time/local-date.ts';
import { WEEKDAYS } from '../time/weekdays.ts';
import { zoneSchema } from '../time/zone.ts';

/** The dealership: its name for printed sheets, the zone in which every close is shown, and how its buyer is reached. */
export const storeSchema = z.strictObject({
  name: z.string().check(z.maxLength(80)),
  zone: zoneSchema,
  contact: z.optional(
    z.string().check(z.minLength(1), z.maxLength(120), z.describe('how to reach the buyer, for printed day sheets')),
  ),
});
export type Store = z.infer<typeof storeSchema>;

const span = {
  from: localTimeSchema,
  to: localTimeSchema,
  who: z.optional(
    z.string().check(z.minLength(1), z.maxLength(80), z.describe('who is on duty then, and gets the reminders')),
  ),
};
const endsLater = z.refine<{ from: string; to: string }>((s) => s.from < s.to, {
  error: 'busy hours must end after they begin',
});

/** Hours in store time when the people who bid are with customers. */
export const rushHoursSchema = z.strictObject({ weekday: z.enum(WEEKDAYS), ...span }).check(endsLater);
export type RushHours = z.infer<typeof rushHoursSchema>;

/** A date that differs from its weekday: other busy hours (a holiday sale), or none at all (closed). */
export const rushExceptionSchema = z.strictObject({
  date: localDateSchema,
  note: z._default(z.string().check(z.maxLength(80)), ''),
  hours: z.array(z.strictObject(span).check(endsLater)),
});
export type RushException = z.infer<typeof rushExceptionSchema>;

export const rushSchema = z.strictObject({
  weekly: z.array(rushHoursSchema),
  exceptions: z._default(z.array(rushExceptionSchema), []),
});
export type Rush = z.infer<typeof rushSchema>;
