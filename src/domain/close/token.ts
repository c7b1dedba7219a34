import type { Weekday } from '../time/weekdays.ts';
import type { ZoneWord } from './zone-words.ts';

/** A time of day as it is written. */
export interface WrittenTime {
  /** 0 to 24. */
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  /** `either` is a form left unfilled: AM/PM. */
  readonly half: 'am' | 'pm' | 'either' | null;
  /** It is on the 24-hour clock beyond doubt: 1405 hrs, 14 h 05, 2026-11-28T14:05:00. */
  readonly wholeDay: boolean;
  /** Its hour has two figures. */
  readonly padded: boolean;
  /** There are seconds, so that it may count down. */
  readonly withSeconds: boolean;
}

/** A calendar date as it is written. */
export type WrittenDate =
  /** Month and day by name or by a year in front, so that there is no question of their order. */
  | {
      readonly form: 'plain';
      readonly year: number | null;
      readonly month: number;
      readonly day: number;
      /** The month is written by its name; else the year stands in front. */
      readonly named: boolean;
    }
  /** Figures of which nobody says which is the month. */
  | {
      readonly form: 'figures';
      readonly parts: readonly [number, number];
      readonly year: string | null;
      readonly mark: string;
    }
  /** "the 28th". */
  | { readonly form: 'day'; readonly day: number };

export type Finest = 'day' | 'hour' | 'minute';

/** A length of time; two where a range is written. */
export interface WrittenDuration {
  readonly ms: readonly number[];
  readonly finest: Finest;
}

/** Words that say how the rest is meant. */
export type Sign = 'join' | 'about' | 'at' | 'closed' | 'closes' | 'opens' | 'extended' | 'left' | 'ago' | 'end-of-day';
type SignToken = { [Kind in Sign]: { readonly kind: Kind } }[Sign];

/** What a part of a text stands for. */
export type Token =
  | { readonly kind: 'zone'; readonly word: ZoneWord }
  | { readonly kind: 'date'; readonly date: WrittenDate }
  | { readonly kind: 'weekday'; readonly weekday: Weekday; readonly which: 'plain' | 'next' | 'last' | 'week-from' }
  /** Days from today. */
  | { readonly kind: 'relative'; readonly days: number; readonly words: string }
  | { readonly kind: 'time'; readonly time: WrittenTime }
  | { readonly kind: 'noon' }
  | { readonly kind: 'midnight' }
  | { readonly kind: 'number'; readonly value: number; readonly padded: boolean }
  | { readonly kind: 'duration'; readonly duration: WrittenDuration }
  | { readonly kind: 'part'; readonly part: 'am' | 'pm' | 'night'; readonly today: boolean }
  /** A clock that can only be time left: 1:04:30:00, 26:15:00. */
  | { readonly kind: 'clock-down'; readonly parts: readonly number[]; readonly withDays: boolean }
  | SignToken
  | { readonly kind: 'unknown'; readonly word: string };

export type TokenOf<Kind extends Token['kind']> = Extract<Token, { kind: Kind }>;
