import type { Happening } from '../../journal/happening.ts';

/** What was said back to a lot's calls, in plain words; null for what is no such thing. */
export function sayClockHappening(happening: Happening): string | null {
  switch (happening.kind) {
    case 'calls-put-off':
      return 'Its calls were put off';
    case 'calls-done':
      return 'Done: no more calls for that close';
    case 'handed-over':
      return happening.to === null ? 'Taken back from whoever had it' : `Handed over to ${happening.to}`;
    case 'close-extended':
      return `The sale added ${happening.minutes} min`;
    case 'lot-alerts-changed':
      return happening.leadMinutes === null
        ? 'Called as Setup has it again'
        : `Calls of its own: ${happening.leadMinutes.join(', ') || 'none'} min before the close`;
    default:
      return null;
  }
}
