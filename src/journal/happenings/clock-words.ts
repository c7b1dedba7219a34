import { sayDuration } from '../../domain/time/say-duration.ts';
import type { CLOCK } from './clock.ts';
import type { WordsFor } from './row.ts';

/** How a lot's reminders were answered, in plain words. */
export const CLOCK_WORDS: WordsFor<typeof CLOCK> = {
  'calls-put-off': () => 'Reminder put off',
  'calls-done': () => 'No more reminders for that close',
  'handed-over': ({ to, taken }) =>
    to === null ? 'No longer handed over' : taken === true ? `${to}: I have it` : `Handed over to ${to}`,
  'close-extended': ({ minutes }) => `Extended by ${minutes} min`,
  'lot-alerts-changed': ({ leadMinutes }) =>
    leadMinutes === null
      ? 'Reminders as in Setup again'
      : `Own reminders: ${leadMinutes.join(', ') || 'none'} min before the close`,
  'alerts-shown': ({ keys }) => (keys.length === 1 ? 'A reminder was shown' : `${keys.length} reminders were shown`),
  'alerts-voided': ({ keys }) =>
    `The clock was wrong: ${keys.length === 1 ? 'a reminder' : `${keys.length} reminders`} will be shown again`,
  'clock-put-right': ({ showed, to }) => `The computer’s clock was put back by ${sayDuration(showed - to)}`,
};
