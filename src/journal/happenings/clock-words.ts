import type { CLOCK } from './clock.ts';
import type { WordsFor } from './row.ts';

/** What was said back to a lot's calls, in plain words. */
export const CLOCK_WORDS: WordsFor<typeof CLOCK> = {
  'calls-put-off': () => 'Its calls were put off',
  'calls-done': () => 'Done: no more calls for that close',
  'handed-over': ({ to }) => (to === null ? 'Taken back from whoever had it' : `Handed over to ${to}`),
  'close-extended': ({ minutes }) => `The sale added ${minutes} min`,
  'lot-alerts-changed': ({ leadMinutes }) =>
    leadMinutes === null
      ? 'Called as Setup has it again'
      : `Calls of its own: ${leadMinutes.join(', ') || 'none'} min before the close`,
  'alerts-shown': ({ keys }) => (keys.length === 1 ? 'A reminder was shown' : `${keys.length} reminders were shown`),
  'alerts-voided': ({ keys }) =>
    `The clock was wrong: ${keys.length === 1 ? 'a reminder' : `${keys.length} reminders`} will be shown again`,
};
