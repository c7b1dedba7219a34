import { DAY, HOUR, MINUTE } from './units.ts';

const UNIT_MS: Readonly<Record<string, number>> = { d: DAY, h: HOUR, m: MINUTE, s: 1000 };

const BEFORE =
  '(?:(?:it\\s+)?(?:closes|ends|closing|ending|time\\s+(?:left|remaining)|remaining|left)\\s*:?\\s*)?(?:in\\s+)?';
const AFTER = '(?:\\s+(?:left|remaining|from\\s+now|to\\s+go))?';
const part = (units: string) => `(?:(\\d{1,4})\\s*(?:${units})\\b[\\s,]*(?:and\\s+)?)?`;
const PARTS = new RegExp(
  `^${BEFORE}${part('d|days?')}${part('h|hrs?|hours?')}${part('m|mins?|minutes?')}${part('s|secs?|seconds?')}${AFTER}$`,
  'i',
);
/** "2:13:05 left", "1d 02:13:05", "in 02:13:05": without such a word it is a time of day. */
const CLOCK =
  /^(in\s+)?(?:(\d{1,3})\s*d(?:ays?)?[\s,]+)?(\d{1,3}):([0-5]\d):([0-5]\d)(\s+(?:left|remaining|to\s+go))?$/i;

/** The milliseconds of a countdown such as "2h 13m", "1 day 4 hours left" or "02:13:05 left"; null when it is none. */
export function countdownMs(text: string): number | null {
  // Blanks may be missing between the parts (2h13m).
  const spaced = text.trim().replace(/(\d)\s*(d|h|m|s|hrs?|mins?|secs?)(?=\d)/gi, '$1$2 ');
  const clock = CLOCK.exec(spaced);
  if (clock !== null && (clock[1] ?? clock[2] ?? clock[6]) !== undefined) return total(clock.slice(2, 6));
  const parts = PARTS.exec(spaced);
  return parts?.slice(1).some((value) => value !== undefined) ? total(parts.slice(1)) : null;
}

const total = (values: readonly (string | undefined)[]): number =>
  ['d', 'h', 'm', 's'].reduce((sum, unit, i) => sum + Number(values[i] ?? 0) * (UNIT_MS[unit] ?? 0), 0);
