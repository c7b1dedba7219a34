import { closesBy, nextClose } from '../domain/alerts/alert-lot.ts';
import type { Instant } from '../domain/time/instant.ts';
import { HOUR } from '../domain/time/units.ts';
import { hashOfText } from '../journal/entry-hash.ts';
import type { Sight } from './sight.ts';
import type { World } from './world.ts';

/** What is planned from when the lots can't be read: the next closings in their words, as they were at the last look. */
interface AtHand {
  readonly madeAt: Instant;
  readonly signature: string;
  readonly sight: Omit<Sight, 'shown' | 'signature'> & { readonly shown: readonly string[] };
}

const NAME = 'at-hand';
/** The words of a lot take a millisecond or two, so only those are kept whose time may come before the lots can be read. */
const AHEAD = 24 * HOUR;
const BEHIND = HOUR;
const MOST = 80;
/** Older than this, too much may have happened. */
const KEEPS = 24 * HOUR;

/** Keeps at hand what the next closings need, unless it is there already. */
export async function keepAtHand(world: World, sight: Sight, now: Instant): Promise<void> {
  const lots = sight.lots
    .filter((lot) => !lot.ended && closesBy(lot) > now - BEHIND && nextClose(lot, now) < now + AHEAD)
    .sort((a, b) => nextClose(a, now) - nextClose(b, now))
    .slice(0, MOST);
  const said = new Set(lots.map(({ id }) => id));
  const shown = [...sight.shown].filter((key) => said.has(key.split(' ')[0] ?? '') || !/^[0-9A-Z]{26} /.test(key));
  const signature = hashOfText(`${sight.signature} ${lots.map(({ id }) => id).join()} ${shown.join()}`);
  const before = await world.recall<AtHand>(NAME);
  if (before?.signature === signature) return;
  const { deadlines, setup, people, again, corrections, spoken } = sight;
  await world.remember<AtHand>(NAME, {
    madeAt: now,
    signature,
    // A copy of a lot has its words, which it works out only when they are read.
    sight: {
      lots: lots.map((lot) => ({ ...lot, bid: { ...lot.bid } })),
      deadlines,
      setup,
      people,
      shown,
      again,
      corrections,
      spoken,
    },
  });
}

/** What was at hand at the last look; null when there is nothing, or it is too old to be told as it stands. */
export async function sightAtHand(world: World, now: Instant): Promise<Sight | null> {
  const kept = await world.recall<AtHand>(NAME);
  if (kept === undefined || Math.abs(now - kept.madeAt) > KEEPS) return null;
  return { ...kept.sight, shown: new Set(kept.sight.shown), signature: kept.signature };
}
