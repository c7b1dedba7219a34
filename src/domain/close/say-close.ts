import type { CloseTime } from '../time/close-time.ts';
import type { Instant } from '../time/instant.ts';
import { sayClock, sayTime } from '../time/say-time.ts';
import { dateIn } from '../time/wall-clock.ts';
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
  const here = withLetters(
    readings.map((at) => sayTime(at, storeZone, now)),
    readings,
    storeZone,
  );
  return readings.map((at, i) => {
    const there = sayClock(at, close.zone);
    const atSale = there === sayClock(at, storeZone) ? '' : ` (${there} ${zoneLetters(at, close.zone)} at the sale)`;
    return { at, words: `${here[i] ?? ''}${atSale}` };
  });
}

/** Moments on one clock, as short as they can be told apart: the time alone within one day. */
export function tellApart(moments: readonly Instant[], zone: Zone): string[] {
  const oneDay = new Set(moments.map((at) => dateIn(zone, at))).size === 1;
  const words = moments.map((at) => (oneDay ? sayClock(at, zone) : sayTime(at, zone, moments[0])));
  return withLetters(words, moments, zone);
}

/** Two moments of the hour that comes twice differ in the letters of their zone alone. */
const withLetters = (words: readonly string[], moments: readonly Instant[], zone: Zone): string[] =>
  moments.map((at, i) => {
    const twice = words.filter((other) => other === words[i]).length > 1;
    return `${words[i]}${twice ? ` ${zoneLetters(at, zone)}` : ''}`;
  });

/** "EDT", "GMT+5:30": what the clocks of a zone go by at a moment. */
function zoneLetters(at: Instant, zone: Zone): string {
  const parts = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'short' }).formatToParts(at);
  return parts.find(({ type }) => type === 'timeZoneName')?.value ?? zone;
}
