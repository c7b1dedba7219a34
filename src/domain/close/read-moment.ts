import { type Outcome, ok, refuse } from '../outcome.ts';
import { addDays } from '../time/calendar-day.ts';
import type { CloseDoubt } from '../time/close-time.ts';
import { instant } from '../time/instant.ts';
import type { LocalDate } from '../time/local-date.ts';
import { DAY, MINUTE } from '../time/units.ts';
import { type WallClock, wallClock } from '../time/wall-clock.ts';
import { zone } from '../time/zone.ts';
import type { CloseKnown } from './close-known.ts';
import type { ClosingPart } from './closing-part.ts';
import { dateInWords } from './date-in-words.ts';
import { momentsSaid, type Said } from './moments-said.ts';
import type { Reading } from './reading.ts';
import { type TimeGroup, timeGroups } from './time-groups.ts';
import type { Token } from './token.ts';
import { isDay, whichDays } from './which-days.ts';
import { type DayTime, whichTimes } from './which-times.ts';
import type { ZoneWord } from './zone-words.ts';

const UTC = zone('UTC');

/** A date and a time of day. */
export function readMoment(given: ClosingPart, known: CloseKnown): Outcome<Reading> {
  const part = withDaysAhead(given);
  const groups = timeGroups(part.tokens);
  if (!groups.ok) return groups.reason === 'no-time' ? noTime(part, known) : groups;
  const each: Reading[] = [];
  for (const group of groups.value) {
    const read = readGroup(group, part, known);
    if (!read.ok) return read;
    each.push(read.value);
  }
  return ok(withDurations(joined(each, groups.value), part, known));
}

/** "In 3 days, 2:05 PM": where no day is named, whole days to go name one. */
function withDaysAhead(part: ClosingPart): ClosingPart {
  if (part.tokens.some(isDay)) return part;
  const tokens = part.tokens.map((token): Token => {
    const [ms, another] = token.kind === 'duration' && token.duration.finest === 'day' ? token.duration.ms : [];
    return ms === undefined || another !== undefined ? token : { kind: 'relative', days: ms / DAY, words: '' };
  });
  return { ...part, tokens };
}

function readGroup(group: TimeGroup, part: ClosingPart, known: CloseKnown): Outcome<Reading> {
  const exact = group.zones.some(({ kind }) => kind === 'offset');
  const days = part.tokens.filter(isDay);
  const times = whichTimes(group.time, {
    part: group.part,
    hasDay: days.length > 0,
    byMachine:
      exact ||
      days.some((day) => day.kind === 'date' && day.date.form === 'plain' && !day.date.named && isMachine(part)),
    exact,
    wholeDay: known.column?.wholeDay === true,
  });
  if (times === null) return refuse('not-a-time', 'There is no such time of day. Check the hour and its minutes.');
  const readings = times.times.flatMap((time) => readingsAt(time, group, part, known));
  const [first] = readings;
  if (first === undefined) return refuse('no-such-date', 'There is no such day. Check the date, and write its year.');
  return ok({
    zone: first.zone,
    how: first.how,
    moments: readings.flatMap(({ moments }) => moments),
    doubts: [
      ...times.doubts,
      ...(part.about || group.about ? (['approximate'] as const) : []),
      ...readings.flatMap(({ doubts }) => doubts),
    ],
  });
}

/** Programs put the year in front and write nothing but figures. */
const isMachine = ({ tokens }: ClosingPart): boolean =>
  tokens.every(({ kind }) => kind === 'date' || kind === 'time' || kind === 'zone');

/** What one time of day can mean on the days that are said. */
function readingsAt(
  time: DayTime,
  { zones, part }: TimeGroup,
  { tokens, closed }: ClosingPart,
  known: CloseKnown,
): Said[] {
  const clock = clockWhereSaid(zones, known);
  const days = tokens.filter(isDay);
  const night =
    part?.today === true && days.length === 0 ? [{ kind: 'relative', days: 0, words: 'today' } as const] : [];
  const { dates, doubts } = whichDays([...days, ...night], {
    today: clock.date,
    storeToday: wallClock(known.now, known.storeZone).date,
    isOver: (date) => date < clock.date || (date === clock.date && time.daysOn === 0 && isBefore(time, clock)),
    closed,
    order: known.column?.order,
  });
  return dates.filter(isInReach).map((date) => {
    const wall = { date: addDays(date, time.daysOn), time: time.time, second: time.second };
    const said = momentsSaid(zones, wall, known);
    return { ...said, doubts: [...doubts, ...said.doubts] };
  });
}

/** Other years are misread, and clocks in them are not known. */
const isInReach = (date: LocalDate): boolean => date >= '1990-01-01' && date < '2100-01-01';

const isBefore = ({ time, second }: DayTime, clock: WallClock): boolean =>
  time < clock.time || (time === clock.time && second < clock.second);

/** What the clock shows now at the place the time is said of: it decides which day "today" and "Sat" are. */
function clockWhereSaid(zones: readonly ZoneWord[], known: CloseKnown): WallClock {
  const here = wallClock(known.now, known.zone ?? known.venueZone ?? known.storeZone);
  const offset = zones.find((word) => word.kind === 'offset');
  if (offset !== undefined) return wallClock(instant(known.now + offset.minutes * MINUTE), UTC);
  return zones.length === 0 ? here : wallClock(known.now, momentsSaid(zones, here, known).zone);
}

/**
 * Several times that are said of one close: two clocks that show the same moment agree, and settle what either leaves open;
 * else it is one of them.
 */
function joined(each: readonly Reading[], groups: readonly TimeGroup[]): Reading {
  const [first, ...others] = each;
  if (first === undefined) throw new Error('no time was read');
  if (others.length === 0) return first;
  // Said twice over: 14:00 (2 PM).
  if (others.every(({ moments }) => moments.join() === first.moments.join())) return first;
  const common = first.moments.filter((at) => others.every(({ moments }) => moments.includes(at)));
  const zoned = groups.every(({ ownZone }) => ownZone);
  if (zoned && common.length > 0) return { ...first, moments: common, doubts: common.length > 1 ? first.doubts : [] };
  const because: CloseDoubt = zoned ? 'two-clocks' : 'range';
  return {
    ...first,
    moments: each.flatMap(({ moments }) => moments),
    doubts: [because, ...each.flatMap(({ doubts }) => doubts)],
  };
}

/** "(in 3 days)", "Ends in 3d 3h": time that is left beside a date, which bears it out or contradicts it. */
function withDurations(read: Reading, { tokens }: ClosingPart, known: CloseKnown): Reading {
  const beside = tokens.flatMap((token) => (token.kind === 'duration' ? token.duration : []));
  const against = beside.flatMap(({ ms, finest }) =>
    ms
      .map((one) => known.now + one)
      .filter((at) => !read.moments.some((moment) => Math.abs(moment - at) < SLACK[finest])),
  );
  if (against.length === 0) return read;
  const moments = [...read.moments, ...against.map((at) => instant(at))];
  return { ...read, moments, doubts: ['two-clocks', ...read.doubts] };
}

/** "3 days" is said of anything from two and a half days on to four. */
const SLACK = { day: 36 * 60 * MINUTE, hour: 60 * MINUTE, minute: 2 * MINUTE } as const;

/** A day without its hour is asked for the hour, by its name. */
function noTime(part: ClosingPart, known: CloseKnown): Outcome<Reading> {
  const days = part.tokens.filter(isDay);
  const zones = part.tokens.flatMap((token: Token) => (token.kind === 'zone' ? token.word : []));
  const clock = clockWhereSaid(zones, known);
  const { dates } = whichDays(days, {
    today: clock.date,
    storeToday: wallClock(known.now, known.storeZone).date,
    isOver: (date) => date < clock.date,
    closed: part.closed,
    order: known.column?.order,
  });
  const named = days.length === 0 ? '' : ` on ${dates.map(dateInWords(clock.date)).join(' or ')}`;
  return refuse('no-time', `At what time does it close${named}? Add it, such as 2:05 PM.`);
}
