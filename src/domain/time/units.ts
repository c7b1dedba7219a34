/** How long each is, in milliseconds. A day is that of a clock that nobody changes; for days of a place see calendar-day.ts. */
export const SECOND = 1000;
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

/** The same day on the face of a clock, where times of day are counted in minutes. */
export const MINUTES_A_DAY = DAY / MINUTE;
