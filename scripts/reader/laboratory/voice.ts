import type { Dice } from '../dice.ts';
import type { InventedLot } from './invented-lot.ts';

export type LotField = Exclude<keyof InventedLot, 'closes' | 'year' | 'make' | 'model'> | 'close';

/** How a site speaks: its words for each field, its figures, and its moments. */
export interface Voice {
  readonly language: string;
  readonly labels: Readonly<Record<LotField | 'vehicle', readonly string[]>>;
  readonly money: readonly ((dollars: number) => string)[];
  readonly miles: readonly ((miles: number) => string)[];
  readonly moments: readonly Moment[];
}

/** @param at milliseconds since 1970 */
export type Moment = (at: number, zone: string, now: number) => string;

/** One site's choice among what its voice has, the same for all its lots. */
export interface Speech {
  readonly language: string;
  readonly label: (field: LotField | 'vehicle') => string;
  readonly money: (dollars: number) => string;
  readonly miles: (miles: number) => string;
  readonly moment: Moment;
}

export function speechOf(voice: Voice, dice: Dice): Speech {
  const chosen = new Map(Object.entries(voice.labels).map(([field, words]) => [field, dice.one(words)]));
  return {
    language: voice.language,
    label: (field) => chosen.get(field) ?? '',
    money: dice.one(voice.money),
    miles: dice.one(voice.miles),
    moment: dice.one(voice.moments),
  };
}

/** The parts of a moment on a wall clock, as figures and as words of a language. */
export function wallParts(at: number, zone: string, language = 'en-US') {
  const format = (options: Intl.DateTimeFormatOptions, name: string, tongue = 'en-US') =>
    new Intl.DateTimeFormat(tongue, { timeZone: zone, ...options }).formatToParts(at).find(({ type }) => type === name)
      ?.value ?? '';
  const hour24 = Number(format({ hour: '2-digit', hourCycle: 'h23' }, 'hour'));
  return {
    year: format({ year: 'numeric' }, 'year'),
    month: Number(format({ month: 'numeric' }, 'month')),
    day: Number(format({ day: 'numeric' }, 'day')),
    hour24,
    hour: hour24 % 12 === 0 ? 12 : hour24 % 12,
    half: hour24 < 12 ? 'AM' : 'PM',
    minute: String(Math.floor(at / 60_000) % 60).padStart(2, '0'),
    monthName: format({ month: 'long' }, 'month', language),
    monthShort: format({ month: 'short' }, 'month', language),
    weekday: format({ weekday: 'long' }, 'weekday', language),
    weekdayShort: format({ weekday: 'short' }, 'weekday', language),
  };
}

const ZONES: Readonly<Record<string, readonly [letters: string, standard: string, name: string, hours: number]>> = {
  'America/New_York': ['ET', 'EST', 'Eastern', -5],
  'America/Chicago': ['CT', 'CST', 'Central', -6],
  'America/Denver': ['MT', 'MST', 'Mountain', -7],
  'America/Los_Angeles': ['PT', 'PST', 'Pacific', -8],
};

/** The words for a zone in winter, which is when the laboratory's sales are. */
export function zoneWords(zone: string) {
  const [letters, standard, name, hours] = ZONES[zone] ?? ['ET', 'EST', 'Eastern', -5];
  return { letters, standard, name, offset: `-0${-hours}:00` };
}

export const two = (figure: number): string => String(figure).padStart(2, '0');
export const grouped = (figure: number, mark = ','): string => String(figure).replace(/\B(?=(?:\d{3})+$)/g, mark);
