import { readCloseTime } from '../../domain/close/read-close-time.ts';
import { closeChoices } from '../../domain/close/say-close.ts';
import { type CloseTime, pickCloseTime } from '../../domain/time/close-time.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Zone } from '../../domain/time/zone.ts';

/** One way to answer when a doubtful close is, in words that no other one has. */
export interface WayToClose {
  readonly picked: CloseTime;
  readonly words: string;
}

/** The zones of most sales in the United States, as their pages write them. */
const ZONES = ['ET', 'CT', 'MT', 'PT'] as const;

/** What a doubtful close can mean; where the page names no zone, in each zone of the country that it may be said in. */
export function waysToClose(close: CloseTime, storeZone: Zone, now: Instant): readonly WayToClose[] {
  const ways = (one: CloseTime, zone: string): readonly WayToClose[] =>
    closeChoices(one, storeZone, now).map(({ at, words }) => ({
      picked: pickCloseTime(one, at),
      words: `${zone}${words}`,
    }));
  if (!close.doubts.includes('no-zone')) return ways(close, '');
  const zoned = ZONES.flatMap((zone) => {
    const read = readCloseTime(`${close.text} ${zone}`, { now, storeZone });
    return read.ok ? ways({ ...read.value, text: close.text }, `${zone}: `) : [];
  });
  const isSaid = ({ picked }: WayToClose) => zoned.some((way) => way.picked.instant === picked.instant);
  return [...zoned, ...ways(close, 'Store time: ').filter((way) => !isSaid(way))];
}
