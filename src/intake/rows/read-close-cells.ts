import type { ColumnHabits } from '../../domain/close/close-known.ts';
import { wordsOfDoubt } from '../../domain/close/doubt-words.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import { DAY, MINUTE } from '../../domain/time/units.ts';
import { isZone, type Zone, zone } from '../../domain/time/zone.ts';
import { zoneInHeading } from '../columns/read-heading.ts';
import type { CloseWords, RowContext } from './row-context.ts';
import type { Cell, RowDraft } from './row-draft.ts';
import { serialToText } from './spreadsheet-serial.ts';

/** The cells of a row that say when it closes. */
export interface CloseCells {
  readonly closes?: Cell | undefined;
  readonly closeDate?: Cell | undefined;
  readonly closeTime?: Cell | undefined;
  readonly timeLeft?: Cell | undefined;
  readonly zone?: Cell | undefined;
  readonly closesUtc?: Cell | undefined;
}

/** Puts the cells of a close together and has them read; a UTC column settles what the others leave open. */
export function readCloseCells(
  cells: CloseCells,
  venueZone: Zone | undefined,
  draft: RowDraft,
  context: RowContext,
): void {
  const told = cells.closes ?? cells.closeDate ?? cells.closeTime ?? cells.timeLeft;
  const utc = cells.closesUtc === undefined ? undefined : readUtc(cells.closesUtc.text);
  if (cells.closesUtc !== undefined && utc === undefined) {
    draft.unread(cells.closesUtc, 'This is not a moment in UTC. Write it as 2026-11-28T19:05:00Z.');
  }
  if (told === undefined) {
    if (cells.closesUtc === undefined || utc === undefined) return;
    const inZone = venueZone ?? context.storeZone;
    const { text } = cells.closesUtc;
    draft.set(
      'close',
      { instant: utc, text, zone: inZone, how: 'stated-offset', doubts: [], otherwise: [] },
      cells.closesUtc,
    );
    return;
  }
  const { text, zone: stated } = context.closeWords(keyOf(cells), () => wordsOfClose(cells));
  const read = context.readClose(text, {
    now: context.now,
    storeZone: context.storeZone,
    ...(venueZone === undefined ? {} : { venueZone }),
    ...(stated === undefined ? {} : { zone: stated }),
    column: habitsOf(cells, context),
  });
  const cell = { ...told, text };
  if (!read.ok) {
    draft.unread(cell, read.message);
    return;
  }
  const close = utc === undefined ? read.value : settledBy(utc, read.value);
  draft.set('close', close ?? read.value, cell, (close ?? read.value).doubts.length > 0 ? 'doubtful' : 'certain');
  if (close === undefined)
    draft.question(cell, 'The UTC column says another time; the local one was used. Check the close.');
  else if (close.doubts.length > 0) {
    draft.question(cell, `${wordsOfDoubt(close)} Choose the right close on the lot’s worksheet.`);
  }
  const far = farAway((close ?? read.value).instant, context.now);
  if (far !== undefined) draft.question(cell, far);
}

/** A close of another year is read as it stands, and remarked on: more often than not a digit of the year is wrong. */
function farAway(close: Instant, now: Instant): string | undefined {
  const days = (close - now) / DAY;
  if (days < -FAR) return 'This close passed more than a year ago. Check its year.';
  return days > FAR ? 'This close is more than a year away. Check its year.' : undefined;
}

/** Days. */
const FAR = 366;

/** The close that the UTC column names, if it is among those that the words can mean. */
function settledBy(utc: Instant, close: CloseTime): CloseTime | undefined {
  const minute = Math.floor(utc / MINUTE);
  const moments = [close.instant, ...close.otherwise];
  const named =
    moments.find((moment) => moment === utc) ?? moments.find((moment) => Math.floor(moment / MINUTE) === minute);
  if (named === undefined) return undefined;
  return close.doubts.length === 0 ? close : { ...close, instant: named, how: 'picked', doubts: [], otherwise: [] };
}

/** How the columns write that its words come from: the date has its order, the time its clock. */
function habitsOf({ closes, closeDate, closeTime }: CloseCells, { closeHabits }: RowContext): ColumnHabits {
  const [whole, date, time, left] = (['closes', 'closeDate', 'closeTime', 'timeLeft'] as const).map(
    (id) => closeHabits?.[id],
  );
  if (closes === undefined && closeDate === undefined && closeTime === undefined)
    return { countsDown: left?.countsDown ?? 'by its words' };
  return { order: whole?.order ?? date?.order, wholeDay: (whole ?? time ?? date)?.wholeDay === true };
}

/** Everything that the words of a close depend on; thousands of rows share it. */
const keyOf = ({ closes, closeDate, closeTime, timeLeft, zone: zoneCell }: CloseCells): string =>
  `${closes?.heading} ${closes?.text}\n${closeDate?.text}\n${closeTime?.heading} ${closeTime?.text}\n${timeLeft?.text}\n${zoneCell?.text}`;

/** All that is said about the close in one line; a zone by name is handed over apart. */
function wordsOfClose({ closes, closeDate, closeTime, timeLeft, zone: zoneCell }: CloseCells): CloseWords {
  if (closes === undefined && closeDate === undefined && closeTime === undefined && timeLeft !== undefined)
    return { text: timeLeft.text };
  const date = closeDate && plainDate(closeDate.text, closeTime !== undefined);
  const time = closeTime && plainTime(closeTime.text);
  const whole = closes && serialToText(closes.text);
  const parts = whole !== undefined && hasDateAndTime(whole) ? [whole] : [date, whole, time];
  const words = parts.filter((part) => part !== undefined).join(' ');
  const zoneText = zoneCell?.text ?? '';
  if (isZone(zoneText)) return { text: words, zone: zone(zoneText) };
  const letters = zoneText || headingZone(closes, closeTime) || '';
  return { text: letters === '' || saysZone(words) ? words : `${words} ${letters}` };
}

const headingZone = (...cells: readonly (Cell | undefined)[]): string | undefined =>
  cells.map((cell) => (cell === undefined ? null : zoneInHeading(cell.heading))).find((letters) => letters !== null) ??
  undefined;

const hasDateAndTime = (text: string): boolean =>
  /\d{1,2}:\d{2}|\d ?[ap]\.?m/i.test(text) && /\d\s*[-/., ]\s*\S+/.test(text.replace(/\d{1,2}:\d{2}.*/, ''));

const saysZone = (text: string): boolean =>
  /(?:\b(?:[ECMP]|AK|H)[SD]?T|\b(?:UTC|GMT|AZ|Eastern|Central|Mountain|Pacific|Arizona)|\dZ|[+-]\d{2}:?\d{2})\b/i.test(
    text,
  );

/** Spreadsheets write the time of a date without one as midnight, and the date of a time as their day zero. */
function plainDate(text: string, timeElsewhere: boolean): string {
  const date = serialToText(text);
  return timeElsewhere ? date.replace(/[ T](?:0?0:00(?::00(?:\.0+)?)?|12:00(?::00)? ?AM)$/i, '') : date;
}

const plainTime = (text: string): string =>
  serialToText(text).replace(/^(?:12\/30\/1899|1\/0\/1900|1899-12-30|1900-01-00)[ T]/, '');

/** "2026-11-28T19:05:00Z", with or without the T, the seconds and the Z. */
function readUtc(text: string): Instant | undefined {
  const plain = /^(\d{4}-\d{2}-\d{2})[ T](\d{2}:\d{2})(:\d{2}(?:\.\d{1,3})?)?(?: ?(?:Z|UTC))?$/i.exec(text);
  const at = plain === null ? Number.NaN : Date.parse(`${plain[1]}T${plain[2]}${plain[3] ?? ''}Z`);
  return at >= 0 ? instant(at) : undefined;
}
