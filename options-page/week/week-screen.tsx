import { mondayOf } from '../../src/domain/time/calendar-day.ts';
import type { LocalDate, LocalTime } from '../../src/domain/time/local-date.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { DayView } from './day-view.tsx';
import { WeekView } from './week-view.tsx';
import './week.css';

interface WeekScreenProps {
  readonly show: 'week' | 'day';
  /** Any day of the week to show; today when null. */
  readonly date: LocalDate | null;
  /** Where to begin in the day. */
  readonly at: LocalTime | null;
}

/** Time as a place: a week of closings, or one day of them. */
export function WeekScreen({ show, date, at }: WeekScreenProps) {
  const { setup } = useWorkspace();
  const now = useNow(5000);
  const today = dateIn(setup.store.zone, now);
  const wanted = date ?? today;
  if (show === 'day') return <DayView key={wanted} date={wanted} at={at} today={today} now={now} />;
  return <WeekView monday={mondayOf(wanted)} today={today} now={now} />;
}
