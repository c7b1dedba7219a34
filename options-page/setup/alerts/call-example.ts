import type { AlertRules } from '../../../src/domain/setup/alert-rules.ts';
import { minutesInWords } from '../../../src/views/words/time-of-day-words.ts';

/** The close that the examples are about: five past two in the afternoon. */
const CLOSE = 14 * 60 + 5;

/** When the calls come for one close, in words, so that the figures can be judged: all but the last are quiet. */
export function callExample({ leadMinutes, placedLeadMinutes, afterCloseMinutes }: AlertRules): string {
  const placed = placedLeadMinutes.length === 0 ? 'none' : times(placedLeadMinutes);
  const quiet =
    leadMinutes.length > 1 ? `, ${leadMinutes.length > 2 ? 'all but the last' : 'the first one'} quiet` : '';
  const after =
    afterCloseMinutes === null
      ? 'Nothing is asked afterwards.'
      : `At ${minutesInWords(CLOSE + afterCloseMinutes)}, or when the busy hours are over, you are asked how it ended.`;
  return `A lot closes at ${minutesInWords(CLOSE)}. Reminders at ${times(leadMinutes)}${quiet}; with the proxy placed: ${placed}. ${after}`;
}

const times = (leads: readonly number[]) => leads.map((lead) => minutesInWords(CLOSE - lead)).join(', ');
