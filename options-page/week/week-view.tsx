import { useMemo } from 'preact/hooks';
import { addDays, startOfDay } from '../../src/domain/time/calendar-day.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { dayFrame } from '../../src/domain/week/day-frame.ts';
import { hoursShown } from '../../src/domain/week/hours-shown.ts';
import { SaveCalendar } from '../../src/ui/calendar/save-calendar.tsx';
import { TimeLine } from '../../src/ui/charts/time-line/time-line.tsx';
import { usePageSubject } from '../../src/ui/page-subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { clockTimes, timesOfDay } from '../../src/views/week/times-of-day.ts';
import { DayHead } from './day-head.tsx';
import { Legend } from './legend.tsx';
import { NothingCloses } from './nothing-closes.tsx';
import { timeRowOf, timeWordsOf } from './time-row-of.ts';
import { useCallsAhead } from './use-calls-ahead.ts';
import { useClosings } from './use-closings.ts';

interface WeekViewProps {
  readonly monday: LocalDate;
  readonly today: LocalDate;
  readonly now: Instant;
}

/** Seven days, a row each. */
export function WeekView({ monday, today, now }: WeekViewProps) {
  const { setup, complete } = useWorkspace();
  const { zone } = setup.store;
  const [from, before] = useMemo(
    () => [startOfDay(monday, zone), startOfDay(addDays(monday, 7), zone)] as const,
    [monday, zone],
  );
  const { closings, calendar, standingOf, minute } = useClosings(from, before, now);
  const calls = useCallsAhead(from, before, minute);
  const hours = useMemo(() => {
    const bands = calendar.bandsBetween(from, before);
    return hoursShown(timesOfDay(closings, bands, zone), clockTimes(calls.moments, zone));
  }, [closings, calls.moments, calendar, from, before, zone]);
  const rows = useMemo(() => {
    const shown = { from: hours.from, to: hours.to };
    return [0, 1, 2, 3, 4, 5, 6].map((i) => {
      const date = addDays(monday, i);
      const frame = dayFrame(date, zone, shown);
      const ofDay = closings.filter((closing) => closing.date === date);
      const head = <DayHead frame={frame} closings={ofDay} today={date === today} />;
      return timeRowOf(frame, ofDay, { setup, calendar }, head);
    });
  }, [closings, calendar, hours.from, hours.to, monday, zone, setup, today]);
  const words = useMemo(() => timeWordsOf(setup, standingOf, calls.ofLot), [setup, standingOf, calls.ofLot]);
  const title = `${sayDate(monday)} to ${sayDate(addDays(monday, 6))}`;
  usePageSubject(title);
  return (
    <section class="week stack" aria-busy={!complete}>
      <div class="row apart">
        <div>
          <h1>{title}</h1>
          <p class="small quiet">In store time, {zone}</p>
        </div>
        <div class="row no-print">
          <a class="button" href={`#/week/of/${addDays(monday, -7)}`}>
            Week before
          </a>
          <a class="button" href="#/week">
            This week
          </a>
          <a class="button" href={`#/week/of/${addDays(monday, 7)}`}>
            Week after
          </a>
          <SaveCalendar label="Save for your calendar" choice={{ from, before }} name={`closings-week-of-${monday}`} />
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
      </div>
      {complete && closings.length === 0 && <NothingCloses what="this week" after={before} />}
      <TimeLine label="Closings of the week" rows={rows} alerts={calls.moments} words={words} now={now} onPaper />
      <Legend />
    </section>
  );
}
