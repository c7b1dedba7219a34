import type { Instant } from '../time/instant.ts';

/** One closing as other calendars get it. */
export interface CalendarEvent {
  /** The same for the same lot for ever, whichever machine writes the file. */
  readonly uid: string;
  /** Grows with every change, so that a calendar that has the event already takes this one for it. */
  readonly sequence: number;
  /** When what the event says was last revised; the file of an unchanged lot is the same file. */
  readonly revisedAt: Instant;
  readonly at: Instant;
  readonly summary: string;
  readonly description: string;
  readonly location?: string | undefined;
  readonly url?: string | undefined;
  readonly status: 'CONFIRMED' | 'TENTATIVE' | 'CANCELLED';
  readonly alarms: readonly CalendarAlarm[];
}

export interface CalendarAlarm {
  /** When it rings; not after the event. */
  readonly at: Instant;
  readonly words: string;
}
