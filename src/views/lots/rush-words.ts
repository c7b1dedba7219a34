import { type RushCalendar, type RushStanding, rushCalendar } from '../../domain/rush/rush-bands.ts';
import type { Setup } from '../../domain/setup/setup.ts';

/** How a close stands to the busy hours, in words. */
export const RUSH_WORDS: Record<RushStanding['kind'], string> = {
  in: 'in your rush',
  near: 'near your rush',
  clear: 'clear of your rush',
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
