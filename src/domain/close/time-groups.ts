import { type Outcome, ok, refuse } from '../outcome.ts';
import type { Token, TokenOf, WrittenTime } from './token.ts';
import type { ZoneWord } from './zone-words.ts';

/** A time of day with the zone words that go with it. */
export interface TimeGroup {
  readonly time: TokenOf<'time'> | TokenOf<'noon'> | TokenOf<'midnight'>;
  readonly zones: readonly ZoneWord[];
  /** The zone was said of this time alone. */
  readonly ownZone: boolean;
  readonly part: TokenOf<'part'> | undefined;
  readonly about: boolean;
}

type TimeToken = TimeGroup['time'];
const isTime = (token: Token): token is TimeToken =>
  token.kind === 'time' || token.kind === 'noon' || token.kind === 'midnight';

/** The times of a text in their order, each with its zone: its own, else the one that is said of all. */
export function timeGroups(all: readonly Token[]): Outcome<readonly TimeGroup[]> {
  const tokens = withHours(all);
  if (tokens.some(({ kind }) => kind === 'clock-down'))
    return refuse('not-a-time', 'There is no such time of day. Check the hour and its minutes.');
  if (tokens.some(({ kind }) => kind === 'number'))
    return refuse(
      'not-understood',
      'There is a number here that was not understood. Write only the date and the time.',
    );
  const places = tokens.flatMap((token, i) => (isTime(token) ? [i] : []));
  if (places.length === 0) return refuse('no-time', '');
  const zonesIn = (from: number, to: number) =>
    tokens.slice(from, to).flatMap((token) => (token.kind === 'zone' ? token.word : []));
  const every = zonesIn(0, tokens.length);
  const groups = places.flatMap((place, i): TimeGroup[] => {
    const time = tokens[place];
    if (time === undefined || !isTime(time)) return [];
    const [from, to] = [i === 0 ? 0 : place, places[i + 1] ?? tokens.length];
    const own = zonesIn(from, to);
    const beside = tokens.slice(from, to);
    return [
      {
        time,
        zones: own,
        ownZone: own.length > 0,
        part: beside.find((token) => token.kind === 'part') ?? tokens.find((token) => token.kind === 'part'),
        about: beside.some(({ kind }) => kind === 'about'),
      },
    ];
  });
  const paired = groups.length > 1 && groups.every(({ ownZone }) => ownZone);
  return ok(
    withHalves(
      paired || groups.length === 1 ? groups : groups.map((group) => ({ ...group, zones: every, ownZone: false })),
    ),
  );
}

/** A bare number is an hour where it stands like one: "at 10", "2 ET", "8 tonight", "2-4 PM". */
function withHours(tokens: readonly Token[]): readonly Token[] {
  const hasTime = tokens.some(isTime);
  return tokens.map((token, i) => {
    if (token.kind !== 'number' || token.value > 23) return token;
    const [before, next] = [tokens[i - 1]?.kind, tokens[i + 1]?.kind];
    const joined =
      (before === 'join' || next === 'join') && (hasTime || tokens.filter(({ kind }) => kind === 'number').length > 1);
    const stands =
      joined ||
      (!hasTime && (before === 'at' || next === 'zone' || next === 'part' || before === 'part' || isAlone(tokens)));
    return stands ? hourOf(token) : token;
  });
}

/** With a day and nothing else, what can it be but the hour? */
const isAlone = (tokens: readonly Token[]): boolean => {
  const numbers = tokens.filter(({ kind }) => kind === 'number');
  return (
    numbers.length === 1 && tokens.some(({ kind }) => kind === 'weekday' || kind === 'date' || kind === 'relative')
  );
};

const hourOf = ({ value, padded }: TokenOf<'number'>): TokenOf<'time'> => ({
  kind: 'time',
  time: { hour: value, minute: 0, second: 0, half: null, wholeDay: false, padded, withSeconds: false },
});

/** "2-4 PM" is from two in the afternoon, "11-1 PM" from eleven in the morning. */
function withHalves(groups: readonly TimeGroup[]): readonly TimeGroup[] {
  return groups.map((group, i) => {
    const next = groups[i + 1]?.time;
    if (
      group.time.kind !== 'time' ||
      next?.kind !== 'time' ||
      (group.zones.length === 0) !== (groups[i + 1]?.zones.length === 0)
    )
      return group;
    const { time } = group.time;
    if (time.half !== null || time.wholeDay || time.hour > 12 || next.time.half === null || next.time.half === 'either')
      return group;
    if (group.ownZone) return group;
    return { ...group, time: { ...group.time, time: { ...time, half: halfBefore(time, next.time) } } };
  });
}

const minutesOf = ({ hour, minute }: WrittenTime): number => (hour % 12) * 60 + minute;

function halfBefore(time: WrittenTime, next: WrittenTime): 'am' | 'pm' {
  const half = next.half === 'am' ? 'am' : 'pm';
  if (minutesOf(time) <= minutesOf(next)) return half;
  return half === 'am' ? 'pm' : 'am';
}
