import { useMemo } from 'preact/hooks';
import type { RushCalendar } from '../../src/domain/rush/rush-bands.ts';
import { readingsOfClose } from '../../src/domain/time/close-time.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import type { LocalTime } from '../../src/domain/time/local-date.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { wallClock } from '../../src/domain/time/wall-clock.ts';
import { needOf } from '../../src/domain/week/closing-need.ts';
import { hasBid } from '../../src/folds/bid-given.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useStandings } from '../../src/ui/hooks/use-standings.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { bidsUnder } from '../../src/views/lots/bids.ts';
import { rushOf } from '../../src/views/lots/rush-words.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import type { Closing } from '../../src/views/week/closing.ts';

export interface Closings {
  /** The soonest first. */
  readonly closings: readonly Closing[];
  readonly calendar: RushCalendar;
  /** What is known of a lot's worksheet so far; all of it a moment later. */
  readonly standingOf: (lot: LotState) => Standing | undefined;
  /** The full minute that all of this is said for. */
  readonly minute: Instant;
}

/** The watched lots that close from `from` up to but not including `to`, as they stand at `now`. */
export function useClosings(from: Instant, to: Instant, now: Instant): Closings {
  const { lots, setup } = useWorkspace();
  const { zone } = setup.store;
  const minute = instant(Math.floor(now / MINUTE) * MINUTE);
  const within = useMemo(
    () =>
      lots
        .flatMap((lot) => {
          const readings = lot.facts.close === undefined ? [] : readingsOfClose(lot.facts.close);
          // While its close is in doubt it stands on every day that this can mean.
          const close = readings.find((at) => at >= from && at < to);
          return close === undefined ? [] : [{ lot, close }];
        })
        .sort((a, b) => a.close - b.close),
    [lots, from, to],
  );
  const watched = useMemo(() => within.map(({ lot }) => lot), [within]);
  const { standings, settled } = useStandings(watched, true);
  const calendar = rushOf(setup);
  const placed = useMemo(
    () =>
      within.map(({ lot, close }) => {
        const { date, time } = wallClock(close, zone);
        return { lot, close, date, time, rush: calendar.of(close) };
      }),
    [within, calendar, zone],
  );
  // `settled` is a dependency because what is known of the standings has changed by then.
  const bidsSoFar = useMemo(
    () => bidsUnder(setup, (lot) => (hasBid(lot) ? standings.of(lot) : (standings.known(lot) ?? NOT_YET))),
    [setup, standings, settled],
  );
  const closings = useMemo(
    () =>
      placed.map((each): Closing => {
        const { clock } = each.lot;
        const bid = bidsSoFar.at(each.lot, minute);
        const need = needOf({
          bid,
          inRush: each.rush.kind === 'in',
          offHands: clock?.handedTo !== undefined || clock?.doneFor === each.lot.facts.close?.instant,
        });
        const { id } = each.lot;
        return {
          ...each,
          id,
          at: each.close,
          label: shortTime(each.time),
          need,
          bid,
          href: `#/lot/${id}`,
        };
      }),
    [placed, minute, bidsSoFar],
  );
  const standingOf = useMemo(() => (lot: LotState) => standings.known(lot), [standings, settled]);
  return { closings, calendar, standingOf, minute };
}

/** "15:05" as "3:05": which half of the day it is, its place on the line says. */
const shortTime = (time: LocalTime) => `${Number(time.slice(0, 2)) % 12 || 12}${time.slice(2)}`;

/** A lot without a bid of ours counts as one to bid on until its max bid is known. */
const NOT_YET: Standing = { maxBid: null, headroom: null, missing: ['max bid being worked out'] };
