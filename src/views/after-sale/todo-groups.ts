import { type Due, dueAt } from '../../domain/after-sale/due.ts';
import type { ToDo } from '../../domain/after-sale/to-do.ts';
import { addDays } from '../../domain/time/calendar-day.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { AfterLot } from './after-lot.ts';

export interface ToDoItem {
  readonly lot: AfterLot;
  readonly toDo: ToDo;
  readonly due: Due;
}

export interface ToDoGroup {
  readonly title: string;
  readonly items: readonly ToDoItem[];
  /** Shown when asked for: what has no date presses nobody. */
  readonly folded: boolean;
}

/** Late, today, tomorrow, within a week, later, and without a date; groups without anything are left out. */
export function groupsByDate(items: readonly ToDoItem[], now: Instant, storeZone: Zone): readonly ToDoGroup[] {
  const today = dateIn(storeZone, now);
  const tomorrow = addDays(today, 1);
  const week = addDays(today, 7);
  const nameOf = ({ due }: ToDoItem): string => {
    const at = dueAt(due);
    if (at === undefined) return 'No date';
    if (at < now) return 'Overdue';
    const date = dateIn(storeZone, at);
    if (date === today) return 'Today';
    if (date === tomorrow) return 'Tomorrow';
    return date <= week ? 'Within a week' : 'Later';
  };
  return ['Overdue', 'Today', 'Tomorrow', 'Within a week', 'Later', 'No date']
    .map((title) => ({
      title,
      items: items.filter((item) => nameOf(item) === title),
      folded: title === 'No date',
    }))
    .filter((group) => group.items.length > 0);
}
