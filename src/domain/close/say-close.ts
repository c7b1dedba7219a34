import type { CloseTime } from '../time/close-time.ts';
import type { Instant } from '../time/instant.ts';
import { sayClock, sayTime } from '../time/say-time.ts';
import type { Zone } from '../time/zone.ts';

/**
 * A close on the clock of `zone`, no finer than it is known: "Sat Nov 28, 12:05 PM", with a question mark while it is in
 * doubt; "about …" where it was told to the hour, "after …" where only to the day.
 * @param near when it was read, or now: a year that is not plain from there is shown
 */
export function sayClose(close: Pick<CloseTime, 'instant' | 'doubts' | 'finest'>, zone: Zone, near: Instant): string {
  const { instant: at, doubts, finest } = close;
  const rough = finest === 'day' ? 'after ' : finest === 'hour' || doubts.includes('approximate') ? 'about ' : '';
  return `${rough}${sayTime(at, zone, near)}${doubts.length > 0 ? '?' : ''}`;
}

/** One moment that a doubtful close can mean, in words that no other one has. */
export interface CloseChoice {
  readonly at: Instant;
  readonly words: string;
}

/**
 * What a close can mean, the earliest first: on the store's clock, and on the sale's where that shows another time. In the
 * hour that comes twice the letters of the zone tell the two apart.
 */
export function closeChoices(close: CloseTime, storeZone: Zone, now: Instant): readonly CloseChoice[] {
  const readings = [close.instant, ...close.otherwise].sort((a, b) => a - b);
  const here = readings.map((at) => sayTime(at, storeZone, now));
  return readings.map((at, i) => {
    const words = here[i] ?? '';
    const twice = here.filter((other) => other === words).length > 1;
    const there = sayClock(at, close.zone);
    const atSale = there === sayClock(at, storeZone) ? '' : ` (${there} ${zoneLetters(at, close.zone)} at the sale)`;
    return { at, words: `${words}${twice ? ` ${zoneLetters(at, storeZone)}` : ''}${atSale}` };
  });
}

/** "EDT", "GMT+5:30": what the clocks of a zone go by at a moment. */
function zoneLetters(at: Instant, zone: Zone): string {
  const parts = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'short' }).formatToParts(at);
  return parts.find(({ type }) => type === 'timeZoneName')?.value ?? zone;
}
