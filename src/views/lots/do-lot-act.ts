import type { LotAct } from '../../acts/act.ts';
import type { Circumstances, Decision } from '../../acts/circumstances.ts';
import { decide } from '../../acts/decide.ts';
import { type ActStore, type Done, doAct } from '../../acts/do-act.ts';
import { monthOf } from '../../domain/books/month.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { wholeSetup } from '../../domain/setup/starting-setup.ts';
import { lastReading } from '../../domain/time/close-time.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { MINUTE } from '../../domain/time/units.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import type { Belief } from '../belief-at.ts';
import { incrementsUnder, maxBidOf } from './bids.ts';
import { type LotWorks, standingsUnder } from './standing.ts';

/** What acts need of the store beside the lot itself. */
export interface LotActStore extends ActStore {
  readonly believedAt: (lot: LotId, at: Instant) => Promise<Belief | null>;
  readonly books: () => Promise<BooksState>;
}

interface ActPlace {
  readonly setup: Setup;
  readonly now: Instant;
  /** The standings under that setup and the plan of now. */
  readonly standings: LotWorks;
}

/**
 * Does something about a lot, whichever door it came through: the one way to write it. What is asked or refused has changed
 * nothing; what was kept is taken back by undoing its entries.
 */
export async function doLotAct(store: LotActStore, lot: LotState, act: LotAct, place: ActPlace): Promise<Done> {
  const circumstances: Omit<Circumstances, 'author'> = {
    now: place.now,
    setup: place.setup,
    people: peopleOf(lot),
    work: workUnder(place, place.standings),
    ...(act.do === 'ended' && (await aboutTheEnd(store, lot, place))),
  };
  return doAct(store, lot.id, act, circumstances);
}

/**
 * What would become of an act on a lot as it is on the screen, without waiting for the store: so that a hand that types on
 * can be let go on, or stopped.
 */
export function previewAct(lot: LotState, act: LotAct, place: ActPlace): Decision {
  const { now, setup } = place;
  return decide(lot, act, { now, setup, author: '', people: peopleOf(lot), work: workUnder(place, place.standings) });
}

/** What is worked out of a lot at a moment. */
export function workUnder(
  { setup, now }: Pick<ActPlace, 'setup' | 'now'>,
  { of, bids }: LotWorks,
): Circumstances['work'] {
  const stepsOf = incrementsUnder(setup);
  return (lot) => ({
    get planned() {
      return of(lot).planned;
    },
    get plannedChance() {
      return of(lot).plannedChance;
    },
    get maxBid() {
      return maxBidOf(of(lot));
    },
    increments: stepsOf(lot),
    bid: bids.at(lot, now),
  });
}

/** The max bid that was believed at the close, and whether the month of the sale is closed already. */
async function aboutTheEnd(store: LotActStore, lot: LotState, { setup, now }: ActPlace) {
  const { id, facts, sale } = lot;
  const noted = sale?.result;
  if (noted !== undefined) {
    const month = monthOf(dateIn(setup.store.zone, noted.at));
    const { closes } = await store.books();
    return { monthClosed: closes.some((close) => close.month >= month) };
  }
  const close = facts.close && lastReading(facts.close);
  if (close === undefined || close > now - MINUTE) return {};
  const belief = await store.believedAt(id, close);
  if (belief === null) return {};
  const { of } = standingsUnder(wholeSetup(belief.setup, setup.store.zone));
  return { maxBidAtClose: { cents: maxBidOf(of({ ...lot, facts: belief.facts })) } };
}

/** Who bid on it or got it before. */
function peopleOf({ bidding, clock }: LotState): string[] {
  const names = [...(bidding?.bids ?? []).map(({ by }) => by), clock?.handedTo?.to ?? ''];
  return [...new Set(names.filter((name) => name !== ''))];
}
