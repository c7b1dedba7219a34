import { weekdayWord } from '../../../src/domain/setup/setup-words.ts';
import type { RushHours } from '../../../src/domain/setup/store.ts';
import { MINUTES_A_DAY } from '../../../src/domain/time/units.ts';
import { WEEKDAYS } from '../../../src/domain/time/weekdays.ts';
import { minutesInWords, minutesOfDay, timeInWords } from '../../../src/views/words/time-of-day-words.ts';

const HOURS = [0, 6, 12, 18];

/** The week at a glance: a row a day, busy hours hatched. The same hours stand as text under it. */
export function WeekPicture({ weekly }: { weekly: readonly RushHours[] }) {
  const words = WEEKDAYS.flatMap((weekday) => {
    const hours = weekly
      .filter((each) => each.weekday === weekday)
      .map((each) => `${timeInWords(each.from)} to ${timeInWords(each.to)}`);
    return hours.length === 0 ? [] : [`${weekdayWord(weekday)} ${hours.join(' and ')}`];
  });
  const said = words.length === 0 ? 'No busy hours in the week.' : `Busy: ${words.join('; ')}.`;
  return (
    <figure class="week-picture">
      <div role="img" aria-label={said}>
        <div class="week-hours">
          {HOURS.map((hour) => (
            <span key={hour} style={{ left: `${(hour / 24) * 100}%` }}>
              {minutesInWords(hour * 60)}
            </span>
          ))}
        </div>
        {WEEKDAYS.map((weekday) => (
          <div key={weekday} class="week-row">
            <span class="week-name">{weekdayWord(weekday).slice(0, 3)}</span>
            <span class="week-track">
              {HOURS.slice(1).map((hour) => (
                <span key={hour} class="week-hour" style={{ left: `${(hour / 24) * 100}%` }} />
              ))}
              {weekly
                .filter((hours) => hours.weekday === weekday && hours.from < hours.to)
                .map((hours) => (
                  <span
                    key={`${hours.from}-${hours.to}`}
                    class="week-band"
                    style={{
                      left: `${(minutesOfDay(hours.from) / MINUTES_A_DAY) * 100}%`,
                      width: `${((minutesOfDay(hours.to) - minutesOfDay(hours.from)) / MINUTES_A_DAY) * 100}%`,
                    }}
                  />
                ))}
            </span>
          </div>
        ))}
      </div>
      <figcaption class="small quiet">{said}</figcaption>
    </figure>
  );
}
