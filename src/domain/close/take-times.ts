import { DAY, HOUR, MINUTE, SECOND } from '../time/units.ts';
import { exactly } from './take-dates.ts';
import type { Finest, Token, WrittenTime } from './token.ts';
import type { Put } from './zone-words.ts';

type Rule = readonly [pattern: RegExp, read: (found: readonly (string | undefined)[]) => Token | null];
const number = (text: string | undefined): number => Number(text ?? '0');

const time = (
  hour: string | undefined,
  minute: string | undefined,
  second: string | undefined,
  half: WrittenTime['half'] = null,
  wholeDay = false,
): Token => ({
  kind: 'time',
  time: {
    hour: number(hour),
    minute: number(minute),
    second: number(second),
    half,
    wholeDay,
    padded: hour?.length === 2,
    withSeconds: second !== undefined,
  },
});

const halfOf = (letters: string | undefined): WrittenTime['half'] =>
  letters === undefined ? null : letters.includes('/') ? 'either' : letters.startsWith('a') ? 'am' : 'pm';

const HALF = String.raw`(am ?\/ ?pm|[ap]m?)(?![a-z])`;

/** Before durations: what would be one if it did not stand for a time of day. */
const SURE: readonly Rule[] = [
  [/\b(?:12 )?noon\b/g, () => ({ kind: 'noon' })],
  [/\b(?:12 )?midnight\b/g, () => ({ kind: 'midnight' })],
  [/\b(?:eod|end of (?:the )?(?:business )?day|close of business|cob)\b/g, () => ({ kind: 'end-of-day' })],
  [
    /(?<![\d:])(\d{1,2}):(\d\d):(\d\d):(\d\d)(?![\d:])/g,
    ([, ...parts]) => ({ kind: 'clock-down', parts: parts.map(number), withDays: true }),
  ],
  [
    new RegExp(String.raw`(?<![\d:.])(\d{1,2})[:.](\d\d)(?::(\d\d)(?:[.,]\d+)?)? ?${HALF}`, 'g'),
    ([, hour, minute, second, half]) => time(hour, minute, second, halfOf(half)),
  ],
  [
    new RegExp(String.raw`(?<![\d:.])(\d{1,2}) ?${HALF.replace('m?', 'm')}`, 'g'),
    ([, hour, half]) => time(hour, undefined, undefined, halfOf(half)),
  ],
  [/(?<![\d:.])(\d{1,2})([ap])(?![a-z])/g, ([, hour, half]) => time(hour, undefined, undefined, halfOf(half))],
  [
    /(?<![\d:.,])([01]\d|2[0-4])([0-5]\d) ?(?:hrs?|hours|h)(?![a-z])/g,
    ([, hour, minute]) => exactly(number(hour), number(minute), 0),
  ],
  [/(?<![\d:.])(\d{1,2})(?::(\d\d))? ?o'clock/g, ([, hour, minute]) => time(hour, minute, undefined)],
  [
    /\bat (\d{1,2}) ?h(?: ?([0-5]\d)(?: ?min\b)?)?(?![a-z\d])/g,
    ([, hour, minute]) => time(hour, minute, undefined, null, true),
  ],
];

/** The clock of 24 hours with an h, as French Canada writes it; without a day beside it, it is a length of time. */
const H_CLOCK: Rule = [
  /(?<![\d:.]|\d ?(?:d|days?|w|weeks?),? ?)(\d{1,2}) ?h(?: ?([0-5]\d)(?: ?min\b)?)?(?![a-z\d]| ?\d)/g,
  ([, hour, minute]) => (number(hour) > 24 ? null : time(hour, minute, undefined, null, true)),
];

/** 14h30 without a day beside it: a time of day in half the world, and time left in the other. */
const EITHER: Rule = [
  /(?<![\d:.])(\d{1,2})h([0-5]\d)(?![a-z\d])/g,
  ([, hour, minute]) => (number(hour) > 24 ? null : time(hour, minute, '0', null, true)),
];

/** 14.30 where a day stands beside it. */
const WITH_POINT: Rule = [
  /(?<![\d:.])(1[3-9]|2[0-3])\.([0-5]\d)(?![\d.])/g,
  ([, hour, minute]) => time(hour, minute, undefined, null, true),
];

const LATE: readonly Rule[] = [
  [
    /(?<![\d:.])(\d{1,3}):(\d\d)(?::(\d\d)(?:[.,]\d+)?)?(?![\d:])/g,
    ([, hour, minute, second]) => (number(hour) > 24 ? down(hour, minute, second) : time(hour, minute, second)),
  ],
  [
    /(?<![\d:.,$])(\d{1,2})(?![\d:.,%]|[a-z]|,\d)/g,
    ([, value]) => ({ kind: 'number', value: number(value), padded: value?.length === 2 }),
  ],
];

const down = (...parts: readonly (string | undefined)[]): Token => ({
  kind: 'clock-down',
  parts: [0, ...parts.map(number)],
  withDays: false,
});

const UNITS: readonly (readonly [RegExp, number, Finest])[] = [
  [/^(?:wks?|weeks?|w)$/, 7 * DAY, 'day'],
  [/^(?:days?|d)$/, DAY, 'day'],
  [/^(?:hours?|hrs?|h)$/, HOUR, 'hour'],
  [/^(?:minutes?|mins?|m)$/, MINUTE, 'minute'],
  [/^(?:seconds?|secs?|s)$/, SECOND, 'minute'],
];
const UNIT = '(?:wks?|weeks?|w|days?|d|hours?|hrs?|h|minutes?|mins?|m|seconds?|secs?|s)(?![a-z])';
const ONE = String.raw`(\d{1,4}(?:\.\d+)?) ?(${UNIT})`;
const RANGE = new RegExp(String.raw`(?<![\d:.])(\d{1,3}) ?(?:-|to|or) ?(\d{1,3}) ?(${UNIT})`, 'g');
const SERIES = new RegExp(
  String.raw`(?<![\d:.$])${ONE}(?:(?:[ ,.]|and)*${ONE})*(?:(?:[ ,]|and)*(\d\d?):(\d\d):(\d\d))?(?:(?<=h)(\d\d)(?!\d))?`,
  'g',
);

const unitOf = (word: string): readonly [number, Finest] => {
  const [, ms, finest] = UNITS.find(([pattern]) => pattern.test(word)) ?? [/$/, 0, 'minute' as const];
  return [ms, finest];
};

/** "2d 4h", "1 day, 4 hours and 5 minutes", "1d 02:13:05", "1h05". */
function series(found: string): Token {
  let ms = 0;
  let finest: Finest = 'day';
  for (const [, amount, unit = ''] of found.matchAll(new RegExp(ONE, 'g'))) {
    const [length, name] = unitOf(unit);
    ms += number(amount) * length;
    finest = name;
  }
  const clock = /(\d\d?):(\d\d):(\d\d)$/.exec(found);
  const minutes = /h(\d\d)$/.exec(found);
  if (clock !== null) ms += number(clock[1]) * HOUR + number(clock[2]) * MINUTE + number(clock[3]) * SECOND;
  if (minutes !== null) ms += number(minutes[1]) * MINUTE;
  const told = clock !== null || minutes !== null ? 'minute' : finest;
  return { kind: 'duration', duration: { ms: [Math.round(ms)], finest: told } };
}

function range(first: string, last: string, unit: string): Token {
  const [length, finest] = unitOf(unit);
  return { kind: 'duration', duration: { ms: [number(first) * length, number(last) * length], finest } };
}

const apply = (text: string, [pattern, read]: Rule, put: Put<Token>): string =>
  text.replace(pattern, (...all: unknown[]) => {
    const found = all.slice(0, -2) as (string | undefined)[];
    const token = read(found);
    return token === null ? (found[0] ?? '') : ` ${put(token)} `;
  });

/**
 * Takes times of day and lengths of time out of a text that is plain and whose dates have been taken out.
 * @param hasDay whether a day stands beside them, which "14 h 30" goes by
 */
export function takeTimes(text: string, hasDay: boolean, put: Put<Token>): string {
  const sure = [...SURE, ...(hasDay ? [H_CLOCK, WITH_POINT] : [EITHER])].reduce(
    (told, rule) => apply(told, rule, put),
    text,
  );
  const lengths = sure
    .replace(RANGE, (_, first: string, last: string, unit: string) => ` ${put(range(first, last, unit))} `)
    .replace(SERIES, (found) => ` ${put(series(found))} `);
  return LATE.reduce((told, rule) => apply(told, rule, put), lengths);
}
