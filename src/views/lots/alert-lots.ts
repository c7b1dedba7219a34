import { type AlertBid, type AlertLot, calledAt, type PriceSeen } from '../../domain/alerts/alert-lot.ts';
import { isSamePerson } from '../../domain/alerts/team-watch.ts';
import type { OpenBid } from '../../domain/bid/bid-state.ts';
import { bidSentence } from '../../domain/bid/bid-words.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { type ClockCorrection, putRight } from '../../domain/time/clock-correction.ts';
import { type CloseTime, isOpenQuestion } from '../../domain/time/close-time.ts';
import { hasBid } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { ClockState } from '../../journal/states/clock-state.ts';
import { bidOffer } from './act-offers.ts';
import { newsOfBid } from './bid-news.ts';
import { stopOfStanding } from './bids.ts';
import type { LotWorks } from './standing.ts';
import { stopWords } from './stop-words.ts';

/** Lots as the alert plan sees them; those without a close, or no longer watched, are left out. See `alertLot`. */
export function alertLots(
  lots: readonly LotState[],
  works: LotWorks,
  corrections: readonly ClockCorrection[] = [],
  me?: string,
): AlertLot[] {
  return lots.flatMap((lot) => alertLot(lot, works, corrections, me) ?? []);
}

/**
 * One lot in the words of an alert, which are worked out only when somebody reads them.
 * @param corrections when clocks were put back, so that what a wrong one put down counts by the right time
 * @param me who uses this computer, where several are in a team: what he has is not in another's hands
 */
export function alertLot(
  lot: LotState,
  works: LotWorks,
  corrections: readonly ClockCorrection[] = [],
  me?: string,
): AlertLot | null {
  const { facts, clock, sale, dropped } = lot;
  const close = facts.close?.instant;
  if (close === undefined || dropped) return null;
  return {
    id: lot.id,
    close,
    ...(facts.close !== undefined && doubtOf(facts.close)),
    get name() {
      return lotTitle(facts);
    },
    get stop() {
      return `${stopWords(works.of(lot))}.`;
    },
    get where() {
      const { venueName, venueId, lotNumber } = facts;
      return [venueName ?? venueId, lotNumber && `lot ${lotNumber}`].filter(Boolean).join(', ') || undefined;
    },
    bid: alertBid(lot, works),
    ...(clock?.handedTo !== undefined && heldBy(clock.handedTo, me)),
    // A bid that waits for the seller is a result for the clock: nothing is left to call for.
    ended: sale?.result !== undefined,
    since: putRight(lot.addedAt, corrections),
    done: clock?.doneFor !== undefined && [close, calledAt({ close, moved: clock.moved })].includes(clock.doneFor),
    putOffUntil: clock?.putOffUntil,
    putOffAt: clock?.putOffAt && putRight(clock.putOffAt, corrections),
    moved: clock?.moved,
    extendedAt: clock?.extended?.to === close ? putRight(clock.extended.at, corrections) : undefined,
    ownLeads: clock?.leadMinutes,
  };
}

const heldBy = ({ to, taken }: NonNullable<ClockState['handedTo']>, me: string | undefined) =>
  isSamePerson(to, me) ? { mine: true } : { handedTo: to, taken };

/** Until somebody chooses, every reading gets its calls. */
const doubtOf = (close: CloseTime): Pick<AlertLot, 'otherCloses' | 'saleZone'> =>
  isOpenQuestion(close) ? { otherCloses: close.otherwise, saleZone: close.zone } : {};

function priceSeen(
  { price, sealed }: OpenBid & { readonly sealed?: boolean },
  maxBid: Cents | null | undefined,
): PriceSeen | undefined {
  if (price === undefined || price.cents === 0 || sealed === true) return undefined;
  const left = (maxBid ?? 0) - price.cents;
  return { cents: price.cents, seenAt: price.seenAt, ...(left > 0 && { left: cents(left) }) };
}

function alertBid(lot: LotState, { of, bids }: LotWorks): AlertBid {
  return {
    get placed() {
      return hasBid(lot);
    },
    get loud() {
      return bids.open(lot).loud;
    },
    get words() {
      return bidSentence(bids.open(lot));
    },
    get offer() {
      return bidOffer(bids.open(lot), stopOfStanding(of(lot)));
    },
    get news() {
      return newsOfBid(lot, bids.open(lot));
    },
    get price() {
      return priceSeen(bids.open(lot), stopOfStanding(of(lot)));
    },
    get at() {
      const state = bids.open(lot);
      return state.is === 'none' ? undefined : state.bid.at;
    },
    get raisable() {
      const state = bids.open(lot);
      return state.is === 'standing' && state.bid.cents < (stopOfStanding(of(lot)) ?? 0);
    },
  };
}
