import { ownBids } from '../domain/bid/own-bids.ts';
import { personFirst } from '../domain/bid/person-words.ts';
import type { Cents } from '../domain/money/cents.ts';
import { amountOf, sayResult } from '../domain/sale/result-words.ts';
import { lastReading } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LotState } from '../folds/lot-state.ts';
import { isSameFact } from '../folds/same-fact.ts';
import type { Happening } from '../journal/happening.ts';
import { biddingOf } from '../journal/states/lot-bidding.ts';
import { subjectOfLot } from '../journal/subject.ts';
import type { Ended } from './act.ts';
import { askFirst, type Circumstances, type Decision, refuseAct, when } from './circumstances.ts';
import { endedQuestion } from './ended-questions.ts';

/**
 * What becomes of "it ended". A correction keeps the moment, the max bid and who bid of the result before it, because what
 * was true then does not change.
 */
export function decideEnded(lot: LotState, act: Ended, circumstances: Circumstances): Decision {
  const { result } = act;
  if (amountOf(result) === 0)
    return refuseAct(
      result.ended === 'won' || result.ended === 'lost'
        ? 'A hammer price must be above $0.'
        : 'An amount must be above $0. Leave it out if it is unknown.',
    );
  const before = lot.sale?.result;
  const inDoubt = lot.sale?.otherResult !== undefined && act.corrects === before?.entry;
  if (before !== undefined && !inDoubt && saysNoMore(before, act))
    return {
      as: 'nothing',
      message: `${personFirst(before.author)} noted it at ${when(before.notedAt, circumstances)}: ${sayResult(result)}.`,
    };
  const own = ownBids(biddingOf(lot).bids);
  const worked = circumstances.work(lot);
  const question = endedQuestion(lot, act, { own, worked, circumstances });
  if (question !== null) return askFirst(question);
  const at = endedAt(lot, act, circumstances.now);
  const maxBid = circumstances.maxBidAtClose === undefined ? worked.maxBid : circumstances.maxBidAtClose.cents;
  const noted = resultNoted(lot, act, at, { maxBid, planned: worked.planned });
  const subject = subjectOfLot(lot.id);
  const live = liveBid(act, at, maxBid, circumstances.author);
  return {
    as: 'write',
    changes: [...(live === null ? [] : [{ subject, happening: live }]), { subject, happening: noted }],
    words: sayResult(result),
  };
}

/** What was believed and planned as it closed. */
interface AtClose {
  readonly maxBid: Cents | null | undefined;
  readonly planned: Cents | null | undefined;
}

function resultNoted(lot: LotState, act: Ended, at: Instant, { maxBid, planned }: AtClose): Happening {
  const before = lot.sale?.result;
  const by = act.by ?? before?.by ?? howWeBid(lot);
  const bidder = act.bidder ?? before?.bidder;
  const maxBidCents = before === undefined ? maxBid : before.maxBidCents;
  const plannedCents = before === undefined ? planned : before.plannedCents;
  const beforeClose = lot.facts.close !== undefined && act.result.ended !== 'withdrawn';
  const early = beforeClose && (act.early === true || before?.early === true);
  const wasBid = act.result.ended !== 'withdrawn' && act.result.ended !== 'not-watched';
  return {
    kind: 'result-noted',
    result: act.result,
    at: before?.at ?? at,
    ...(bidder !== undefined && bidder !== '' && { bidder }),
    ...(wasBid && by !== undefined && { by }),
    ...(maxBidCents !== undefined && { maxBidCents }),
    ...(plannedCents !== undefined && { plannedCents }),
    ...(early && { early }),
    ...(act.bidWasIn !== undefined && { bidWasIn: act.bidWasIn }),
    ...(before !== undefined && { corrects: before.entry }),
  };
}

/** A live bid is the later word; without one, a proxy that stands was bidding. */
function howWeBid({ facts, sale }: LotState): 'proxy' | 'live' | undefined {
  if (sale?.bids.some(({ action }) => action === 'live-bid')) return 'live';
  return facts.proxy === undefined ? undefined : 'proxy';
}

/** The same result once more, with nothing that was not known before. */
function saysNoMore(before: NonNullable<NonNullable<LotState['sale']>['result']>, act: Ended): boolean {
  const more =
    (act.bidWasIn !== undefined && act.bidWasIn !== before.bidWasIn) ||
    (act.bidder !== undefined && act.bidder !== before.bidder) ||
    (act.by !== undefined && act.by !== before.by) ||
    (act.early === true && before.early !== true);
  return isSameFact(before.result, act.result) && !more;
}

/** It ended at the close, as far as anyone knows, or now when the close is still ahead. */
function endedAt({ facts: { close } }: LotState, act: Ended, now: Instant): Instant {
  if (act.closedAt !== undefined) return act.closedAt;
  if (act.early === true || close === undefined || lastReading(close) > now) return now;
  return close.instant;
}

/** A live bid that won and that nobody had noted: it is noted now, by the word of him who answers. */
function liveBid(act: Ended, at: Instant, maxBid: Cents | null | undefined, author: string): Happening | null {
  const cents = amountOf(act.result);
  if (act.liveBy === undefined || cents === undefined) return null;
  const { liveBy } = act;
  return {
    kind: 'bid-noted',
    bid: {
      action: 'live-bid',
      cents,
      at,
      noted: 'after-close',
      ...(maxBid !== undefined && { maxBidCents: maxBid }),
      ...(liveBy !== author && { by: liveBy }),
    },
  };
}
