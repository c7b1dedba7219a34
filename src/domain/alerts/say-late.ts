import { MINUTE } from '../time/units.ts';

/** What comes this much after its time says so. */
const LATE = 2 * MINUTE;

/** "Late by 13 min: " for what was due long enough ago; else nothing. Both in milliseconds since 1970. */
export const lateWords = (dueAt: number, now: number): string =>
  now - dueAt > LATE ? `Late by ${roughly(now - dueAt)}: ` : '';

/** A length of time to the nearest minute, never less than one: "15 min", "2 h 5 min", "3 d". */
export function roughly(ms: number): string {
  const whole = Math.max(1, Math.round(ms / MINUTE));
  if (whole < 60) return `${whole} min`;
  const hours = Math.floor(whole / 60);
  if (hours >= 48) return `${Math.round(hours / 24)} d`;
  return whole % 60 === 0 ? `${hours} h` : `${hours} h ${whole % 60} min`;
}

/** What `say` says of each of the first `most`, and how many more there are. Nothing is asked of the others. */
export function atMost<Item>(most: number, items: readonly Item[], say: (item: Item) => string): string[] {
  const rest = items.length - most;
  const lines = items.slice(0, most).map(say);
  return rest <= 0 ? lines : [...lines, `and ${rest.toLocaleString('en-US')} more`];
}
