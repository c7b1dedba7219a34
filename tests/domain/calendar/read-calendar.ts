import ICAL from 'ical.js';

/** An event as the independent reader has it. */
export interface ReadEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly stamp: number;
  readonly at: number;
  readonly summary: string;
  readonly description: string;
  readonly location: string | null;
  readonly url: string | null;
  readonly status: string;
  /** Seconds from the event to the alarm, and its words. */
  readonly alarms: readonly (readonly [number, string])[];
}

/** Reads a calendar file with a parser that is none of ours. */
export function readCalendar(file: string): readonly ReadEvent[] {
  const calendar = new ICAL.Component(ICAL.parse(file));
  return calendar.getAllSubcomponents('vevent').map((event) => {
    const text = (name: string) => {
      const value = event.getFirstPropertyValue(name);
      return value === null ? null : String(value);
    };
    const moment = (name: string) => (event.getFirstPropertyValue(name) as ICAL.Time).toJSDate().getTime();
    return {
      uid: text('uid') ?? '',
      sequence: Number(text('sequence')),
      stamp: moment('dtstamp'),
      at: moment('dtstart'),
      summary: text('summary') ?? '',
      description: text('description') ?? '',
      location: text('location'),
      url: text('url'),
      status: text('status') ?? '',
      alarms: event
        .getAllSubcomponents('valarm')
        .map((alarm) => [
          (alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds(),
          String(alarm.getFirstPropertyValue('description')),
        ]),
    };
  });
}
