import * as z from 'zod/mini';
import { instantSchema } from '../../domain/time/instant.ts';
import { MINUTES_A_DAY } from '../../domain/time/units.ts';

const minutes = z.int().check(z.gte(1), z.lte(MINUTES_A_DAY), z.describe('minutes'));

/** What is said back to an alert. All but the last are about one lot. */
export const CLOCK = [
  /** Nothing is said of the lot until then; then it is called again. */
  z.strictObject({ kind: z.literal('calls-put-off'), until: instantSchema }),
  /** No more calls for this close. A close that moves is called again. */
  z.strictObject({ kind: z.literal('calls-done'), close: instantSchema }),
  /** Somebody else watches it from here on; null takes it back. */
  z.strictObject({
    kind: z.literal('handed-over'),
    to: z.nullable(z.string().check(z.minLength(1), z.maxLength(80))),
  }),
  /** The sale added time to the close that was known as `from`; said of any other close, it changes nothing. */
  z.strictObject({ kind: z.literal('close-extended'), from: instantSchema, minutes }),
  /** Other calls for this lot than the rules have, the earliest first; null goes back to the rules. */
  z.strictObject({
    kind: z.literal('lot-alerts-changed'),
    leadMinutes: z.nullable(z.array(minutes).check(z.maxLength(10))),
  }),
  /** The clock went back: what was said by the wrong time does not count as said. About the alerts as a whole. */
  z.strictObject({ kind: z.literal('alerts-voided'), keys: z.array(z.string()).check(z.minLength(1)) }),
] as const;
