import { useMemo } from 'preact/hooks';
import { addDays, startOfDay } from '../../src/domain/time/calendar-day.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../src/domain/time/local-date.ts';
import { sayClock } from '../../src/domain/time/say-time.ts';
import { dayFrame } from '../../src/domain/week/day-frame.ts';
import { hoursShown } from '../../src/domain/week/hours-shown.ts';
import { SaveCalendar } from '../../src/ui/calendar/save-calendar.tsx';
import { TimeLine } from '../../src/ui/charts/time-line/time-line.tsx';
import { usePageSubject } from '../../src/ui/page-subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countsOf } from '../../src/views/week/closing-words.ts';
import { dayGroups, rushEdges } from '../../src/views/week/day-groups.ts';
import { shiftWords } from '../../src/views/week/shift-words.ts';
import { clockTimes, timesOfDay } from '../../src/views/week/times-of-day.ts';
import { dayInWords } from '../../src/views/words/date-words.ts';
import { DayList } from './day-list.tsx';
import { NothingCloses } from './nothing-closes.tsx';
import { SheetHead } from './sheet-head.tsx';
import { timeRowOf, timeWordsOf } from './time-row-of.ts';
import { useCallsAhead } from './use-calls-ahead.ts';
import { useClosings } from './use-closings.ts';

interface DayViewProps {
  readonly date: LocalDate;
  readonly at: LocalTime | null;
  readonly today: LocalDate;
  readonly now: Instant;
}

/** One day: its line, and under it every closing in order. On paper it is the sheet for whoever is on duty. */
export function DayView({ date, at, today, now }: DayViewProps) {
  const { setup, complete } = useWorkspace();
  const { zone } = setup.store;
  usePageSubject(dayInWords(date));
  const [from, before] = useMemo(
    () => [startOfDay(date, zone), startOfDay(addDays(date, 1), zone)] as const,
    [date, zone],
  );
  const { closings, calendar, standingOf, minute } = useClosings(from, before, now);
  const calls = useCallsAhead(from, before, minute);
  const bands = calendar.bandsOn(date);
  const hours = useMemo(
    () => hoursShown(timesOfDay(closings, bands, zone), clockTimes(calls.moments, zone)),
    [closings, calls.moments, bands, zone],
  );
  const row = useMemo(() => {
    const frame = dayFrame(date, zone, { from: hours.from, to: hours.to });
    return timeRowOf(frame, closings, { setup, calendar }, null);
  }, [closings, calendar, date, zone, setup, hours.from, hours.to]);
  const words = useMemo(() => timeWordsOf(setup, standingOf, calls.ofLot), [setup, standingOf, calls.ofLot]);
  const groups = useMemo(() => {
    const clock = (moment: Instant) => sayClock(moment, zone);
    const isToday = minute >= from && minute < before;
    const edges = [
      ...rushEdges(bands, clock),
      ...(isToday ? [{ at: minute, kind: 'now' as const, words: `Now, ${clock(minute)}` }] : []),
    ];
    return dayGroups(closings, edges, setup.alerts.reactionMinutes);
  }, [closings, bands, zone, minute, from, before, setup]);
  const shift = shiftWords(row.frame.shiftMinutes);
  return (
    <section class="week day stack" aria-busy={!complete}>
      <SheetHead date={date} bands={bands} />
      <div class="row apart no-print">
        <div>
          <h1>{dayInWords(date)}</h1>
          <p class="week-counts across">
            <span class="strong">{closings.length.toLocaleString('en-US')} close</span>
            {countsOf(closings).map(({ need, words: counted }) => (
              <span key={need} class={need === 'danger' ? 'act' : 'quiet'}>
                {counted}
              </span>
            ))}
          </p>
          {shift !== '' && <p class="small">{shift}</p>}
        </div>
        <nav class="row" aria-label="Days">
          <a class="button" href={`#/week/${addDays(date, -1)}`}>
            Day before
          </a>
          {date !== today && (
            <a class="button" href={`#/week/${today}`}>
              Today
            </a>
          )}
          <a class="button" href={`#/week/${addDays(date, 1)}`}>
            Day after
          </a>
          <a class="button" href={`#/week/of/${date}`}>
            The week
          </a>
        </nav>
      </div>
      <div class="row no-print">
        <SaveCalendar label="Save for your calendar" choice={{ from, before }} name={`closings-${date}`} />
        <button type="button" onClick={() => print()}>
          Print the day sheet
        </button>
      </div>
      {closings.length > 0 && (
        <TimeLine
          label={`Closings of ${dayInWords(date)}`}
          rows={[row]}
          alerts={calls.moments}
          words={words}
          now={now}
          onPaper={false}
        />
      )}
      {closings.length > 0 && <DayList groups={groups} standingOf={standingOf} startAt={at} />}
      {complete && closings.length === 0 && <NothingCloses what="on this day" after={before} />}
    </section>
  );
}
