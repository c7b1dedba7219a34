import { type RushCalendar, type RushStanding, rushCalendar } from '../../domain/rush/rush-bands.ts';
import type { Setup } from '../../domain/setup/setup.ts';

/** Whether a close is in or near the busy hours, in words. Nothing is said when it is clear of them. */
export const RUSH_WORDS: Record<RushStanding['kind'], string> = {
  in: 'in busy hours',
  near: 'near busy hours',
  clear: '',
};

const calendars = new WeakMap<Setup, RushCalendar>();

/** The busy hours of a setup; worked out once for each. */
export function rushOf(setup: Setup): RushCalendar {
  const known = calendars.get(setup);
  if (known !== undefined) return known;
  const made = rushCalendar(setup.rush, setup.store.zone, setup.alerts.nearMinutes);
  calendars.set(setup, made);
  return made;
}
