import { sayDate } from '../../src/domain/time/say-time.ts';
import type { DayFrame } from '../../src/domain/week/day-frame.ts';
import type { Closing } from '../../src/views/week/closing.ts';
import { countsOf } from '../../src/views/week/closing-words.ts';
import { shiftWords } from '../../src/views/week/shift-words.ts';

interface DayHeadProps {
  readonly frame: DayFrame;
  readonly closings: readonly Closing[];
  readonly today: boolean;
}

/** The text beside a day's line: how many lots close, and how many of them are in danger. */
export function DayHead({ frame, closings, today }: DayHeadProps) {
  const counts = countsOf(closings);
  const shift = shiftWords(frame.shiftMinutes);
  return (
    <>
      <h2 class="week-head">
        <a href={`#/week/${frame.date}`}>{sayDate(frame.date)}</a>
        {today && <span class="tag act">today</span>}
      </h2>
      {closings.length > 0 && (
        <p class="week-counts">
          <span class="strong">{closings.length.toLocaleString('en-US')} close</span>
          {counts.map(({ need, words }) => (
            <span key={need} class={need === 'danger' ? 'act week-danger' : 'small quiet'}>
              {words}
            </span>
          ))}
        </p>
      )}
      {shift !== '' && <p class="small">{shift}</p>}
    </>
  );
}
