import type { LocalTime } from '../../../src/domain/time/local-date.ts';
import { minutesOfDay } from '../../../src/views/words/time-of-day-words.ts';
import type { Span } from './span-row.tsx';

const LAST_MINUTE = 23 * 60 + 59;

/** Hours to start from: ten to five on an empty day, else three hours behind the last ones, as far as the day goes. */
export function nextSpan(spans: readonly Span[]): Span {
  if (spans.length === 0) return { from: timeAt(10 * 60), to: timeAt(17 * 60) };
  const end = Math.max(...spans.map((span) => minutesOfDay(span.to)));
  const from = Math.min(end + 60, LAST_MINUTE - 1);
  return { from: timeAt(from), to: timeAt(Math.min(from + 180, LAST_MINUTE)) };
}

// Two digits and two digits make a time of day by construction.
const timeAt = (minutes: number) =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}` as LocalTime;
