import type { CloseDoubt } from '../time/close-time.ts';
import type { LocalTime } from '../time/local-date.ts';
import type { TokenOf, WrittenTime } from './token.ts';

/** One time of day that a text can mean. */
export interface DayTime {
  readonly time: LocalTime;
  readonly second: number;
  /** 1 for the midnight that ends the day. */
  readonly daysOn: 0 | 1;
}

export interface Times {
  readonly times: readonly DayTime[];
  readonly doubts: readonly CloseDoubt[];
}

/** What a time of day depends on beside its figures. */
export interface TimeContext {
  /** "In the afternoon", "tonight". */
  readonly part: TokenOf<'part'> | undefined;
  /** A day is written beside it. */
  readonly hasDay: boolean;
  /** It is written as machines write it, or in UTC, so that two figures are an hour of 24. */
  readonly byMachine: boolean;
  /** An offset is written beside it: then midnight is a moment like any other. */
  readonly exact: boolean;
  /** The column that it stands in is on the 24-hour clock. */
  readonly wholeDay: boolean;
}

/** Before that no sale closes whose writer knew what he wrote: 02:05 is as likely the afternoon. */
const MORNING = 7;
/** Until then a night that began the day before goes on. */
const SMALL_HOURS = 5;

type TimeToken = TokenOf<'time'> | TokenOf<'noon'> | TokenOf<'midnight'>;

/** The times that a token stands for; null when there is no such time of day. */
export function whichTimes(token: TimeToken, context: TimeContext): Times | null {
  if (token.kind === 'noon') return { times: [at(12, 0, 0)], doubts: [] };
  if (token.kind === 'midnight') return midnight(context);
  const { hour, minute, second } = token.time;
  if (minute > 59 || second > 59 || hour > 24 || (hour === 24 && minute + second > 0)) return null;
  if (hour === 24) return { times: [at(0, 0, 0, 1)], doubts: [] };
  const hours = hoursOf(token.time, context);
  // One in the night of Saturday is on Sunday.
  const late = context.part?.part === 'night';
  const times = hours.map((one) => at(one, minute, second, late && one < SMALL_HOURS ? 1 : 0));
  if (hours.length > 1) return { times, doubts: ['half-day'] };
  // A date that a program wrote out without its time, as often as not.
  const bare = !late && hours[0] === 0 && minute === 0 && second === 0 && !context.exact && context.hasDay;
  return bare ? { times: [...times, at(0, 0, 0, 1)], doubts: ['midnight'] } : { times, doubts: [] };
}

function midnight({ part, hasDay }: TimeContext): Times {
  const end = at(0, 0, 0, 1);
  if (part?.part === 'night' || !hasDay) return { times: [end], doubts: [] };
  return { times: [at(0, 0, 0), end], doubts: ['midnight'] };
}

function hoursOf({ hour, half, wholeDay, padded }: WrittenTime, context: TimeContext): readonly number[] {
  const said = half ?? halfOf(context.part, hour);
  if (said === 'either') return hour >= 13 ? [hour] : [hour % 12, (hour % 12) + 12];
  if (said === 'pm') return hour >= 13 ? [hour] : hour === 0 ? [0, 12] : [(hour % 12) + 12];
  if (said === 'am') return hour >= 13 ? [hour - 12, hour] : [hour % 12];
  const clear = wholeDay || context.wholeDay || hour >= 13 || (hour === 0 && padded) || hour === 0;
  if (clear || (context.byMachine && padded && (hour >= MORNING || context.exact))) return [hour];
  return [hour % 12, (hour % 12) + 12];
}

function halfOf(part: TokenOf<'part'> | undefined, hour: number): WrittenTime['half'] {
  if (part === undefined) return null;
  if (part.part === 'night') return hour === 12 || hour < SMALL_HOURS ? 'am' : 'pm';
  return part.part;
}

const at = (hour: number, minute: number, second: number, daysOn: 0 | 1 = 0): DayTime => ({
  time: `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}` as LocalTime,
  second,
  daysOn,
});
