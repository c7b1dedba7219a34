import * as z from 'zod/mini';
import { correctionKey } from '../../domain/time/clock-correction.ts';
import { extendClose } from '../../domain/time/close-time.ts';
import { instantSchema } from '../../domain/time/instant.ts';
import { MINUTES_A_DAY } from '../../domain/time/units.ts';
import { aboutAlerts, aboutLot } from './row.ts';

const minutes = z.int().check(z.gte(1), z.lte(MINUTES_A_DAY), z.describe('minutes'));
const keys = z.array(z.string()).check(z.minLength(1));

/** What is said back to an alert, and what was shown. */
export const CLOCK = [
  /** No reminders for the lot until then; then there is one. */
  aboutLot(
    'calls-put-off',
    { until: instantSchema },
    {
      fold: ({ clock }, { until }, { notedAt }) => ({ clock: { ...clock, putOffUntil: until, putOffAt: notedAt } }),
      undo: 'in history',
      pack: 'everything',
    },
  ),
  /** No more calls for this close. A close that moves is called again. */
  aboutLot(
    'calls-done',
    { close: instantSchema },
    {
      fold: ({ clock }, { close }) => ({ clock: { ...clock, doneFor: close } }),
      undo: 'in history',
      pack: 'everything',
    },
  ),
  /** Somebody else watches it from here on; null takes it back. `taken`: who is named says so himself. */
  aboutLot(
    'handed-over',
    { to: z.nullable(z.string().check(z.minLength(1), z.maxLength(80))), taken: z.optional(z.literal(true)) },
    {
      fold({ clock = {} }, { to, taken }, { notedAt }) {
        const { handedTo: _, ...rest } = clock;
        return { clock: to === null ? rest : { ...rest, handedTo: { to, at: notedAt, ...(taken && { taken }) } } };
      },
      undo: 'in history',
      pack: 'everything',
    },
  ),
  /** The venue extended the close that was known as `from`. For any other close it changes nothing. */
  aboutLot(
    'close-extended',
    { from: instantSchema, minutes },
    {
      fold({ facts, clock }, { from, minutes: added }, { notedAt }) {
        // Told twice, of the same close, it is still one extension.
        if (facts.close?.instant !== from) return null;
        const later = extendClose(facts.close, added);
        const already = clock?.extended?.to === from ? clock.extended.minutes : 0;
        const extended = { to: later.instant, minutes: already + added, at: notedAt };
        return { facts: { ...facts, close: later }, clock: { ...clock, extended } };
      },
      undo: 'in history',
      pack: 'everything',
    },
  ),
  /** Other calls for this lot than the rules have, the earliest first; null goes back to the rules. */
  aboutLot(
    'lot-alerts-changed',
    { leadMinutes: z.nullable(z.array(minutes).check(z.maxLength(10))) },
    {
      fold({ clock = {} }, { leadMinutes }) {
        const { leadMinutes: _, ...rest } = clock;
        return { clock: leadMinutes === null ? rest : { ...rest, leadMinutes } };
      },
      undo: 'in history',
      pack: 'everything',
    },
  ),
  /** Alerts that were shown, by their stable keys. */
  aboutAlerts(
    'alerts-shown',
    { keys },
    { counts: 'in its own browser', fold: (told) => ({ shown: told.keys }), undo: 'never', pack: 'everything' },
  ),
  /** The clock went back: what was said by the wrong time does not count as said. */
  aboutAlerts(
    'alerts-voided',
    { keys },
    { counts: 'in its own browser', fold: (told) => ({ voided: told.keys }), undo: 'never', pack: 'everything' },
  ),
  /** The clock had come to show `showed` and was put back to `to`; see clock-correction.ts. */
  aboutAlerts(
    'clock-put-right',
    { showed: instantSchema, to: instantSchema },
    { counts: 'everywhere', fold: (told) => ({ shown: [correctionKey(told)] }), undo: 'never', pack: 'everything' },
  ),
] as const;
