import { ownBids, type StandingBid } from '../domain/bid/own-bids.ts';
import { person } from '../domain/bid/person-words.ts';
import type { Cents } from '../domain/money/cents.ts';
import { formatMoney } from '../domain/money/format-money.ts';
import { type Ppm, ppm } from '../domain/money/rate.ts';
import type { BidAction } from '../domain/sale/bid-action.ts';
import { proxyAction } from '../domain/sale/proxy-action.ts';
import { sayAction, sayResult } from '../domain/sale/result-words.ts';
import { lastReading } from '../domain/time/close-time.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Change } from '../journal/make-entry.ts';
import { biddingOf } from '../journal/states/lot-bidding.ts';
import { subjectOfLot } from '../journal/subject.ts';
import type { BidAct, BidMade } from './act.ts';
import { bidQuestion } from './bid-questions.ts';
import { askFirst, type Circumstances, type Decision, refuseAct, when } from './circumstances.ts';

/** What becomes of an act on our own bid, or on the price that it is held against. */
export function decideBid(lot: LotState, act: BidAct, circumstances: Circumstances): Decision {
  const { now } = circumstances;
  switch (act.do) {
    case 'bid':
      return decideMade(lot, act, circumstances);
    case 'withdraw':
      return decideWithdraw(lot, act, circumstances);
    case 'accept-risk':
      return decideRisk(lot, act.why, circumstances);
    case 'price':
      return write([priceChange(lot, act.cents)], `price now ${formatMoney(act.cents)}`);
    case 'saw': {
      const { what, says, cents, receipt } = act;
      return noteBid(lot, {
        action: what,
        ...(cents !== undefined && { cents }),
        at: now,
        ...(says !== undefined && { says }),
        ...receipt,
      });
    }
  }
}

function decideMade(lot: LotState, act: BidMade, circumstances: Circumstances): Decision {
  const { now, work } = circumstances;
  const ended = lot.sale?.result;
  if (ended !== undefined)
    return refuseAct(
      ended.result.ended === 'withdrawn'
        ? `The lot was withdrawn at ${when(ended.at, circumstances)}. Nothing was noted.`
        : `How it ended is noted already: ${sayResult(ended.result)}. Nothing was noted; undo that first if it is wrong.`,
    );
  if (act.cents <= 0)
    return refuseAct(
      act.how === 'proxy' ? 'A proxy must be above $0. To take a bid out, use Withdraw.' : 'A bid must be above $0.',
    );
  const own = ownBids(biddingOf(lot).bids);
  const same = act.how === 'proxy' ? own.proxy : own.live;
  if (same?.cents === act.cents && own.rival === undefined)
    return { as: 'nothing', message: alreadyNoted(same, circumstances) };
  const worked = work(lot);
  const question = bidQuestion(lot, act, { own, worked, circumstances });
  if (question !== null) return askFirst(question);
  const { close } = lot.facts;
  const late = act.beforeClose === true && close !== undefined && lastReading(close) <= now;
  const bid: BidAction = {
    action: act.how === 'live' ? 'live-bid' : (proxyAction(own.proxy?.cents, act.cents) ?? 'proxy-placed'),
    cents: act.cents,
    at: late ? lastReading(close) : now,
    ...(late && { noted: 'after-close' as const }),
    ...(act.why !== undefined && act.why !== '' && { why: act.why }),
    ...(worked.maxBid !== undefined && { maxBidCents: worked.maxBid }),
    ...(worked.planned !== undefined && { plannedCents: worked.planned }),
    ...(worked.planned === act.cents && asShare(worked.plannedChance)),
    ...(act.by !== undefined && act.by !== '' && { by: act.by }),
    ...act.receipt,
  };
  const first = act.price === undefined ? [] : [priceChange(lot, act.price)];
  const noted: Change = { subject: subjectOfLot(lot.id), happening: { kind: 'bid-noted', bid } };
  const ignored: Change[] =
    act.ignorePlan === true && lot.planChoice !== 'plan-ignored'
      ? [{ subject: subjectOfLot(lot.id), happening: { kind: 'plan-choice', choice: 'plan-ignored' } }]
      : [];
  return write([...first, noted, ...ignored], sayAction(bid));
}

/** The chance is kept only with the very bid that it was worked out for. */
const asShare = (chance: number | undefined): { readonly chancePpm?: Ppm } =>
  chance === undefined ? {} : { chancePpm: ppm(chance) };

/** "Already noted: $12,000 by the buyer at 12:59 PM." */
function alreadyNoted({ cents, by, at }: StandingBid, circumstances: Circumstances): string {
  return `Already noted: ${formatMoney(cents)}${by === '' ? '' : ` by ${person(by)}`} at ${when(at, circumstances)}.`;
}

function decideWithdraw(
  lot: LotState,
  { released, sure = [] }: Extract<BidAct, { do: 'withdraw' }>,
  circumstances: Circumstances,
): Decision {
  const own = ownBids(biddingOf(lot).bids);
  const proxy = own.proxy?.cents ?? (released === true ? own.withdrawn?.cents : undefined);
  if (proxy === undefined) return refuseAct('No proxy is noted, so there is none to withdraw.');
  const { price } = circumstances.work(lot).bid;
  const mayLead = lot.facts.sealed === undefined && price !== undefined && price.cents > 0 && price.cents <= proxy;
  if (mayLead && released !== true && !sure.includes('released')) {
    const yes = { do: 'withdraw' as const, released: true };
    return askFirst({
      code: 'released',
      words: `Price was ${formatMoney(price.cents)} under your proxy, so it may be yours. Did the venue release the bid?`,
      choices: [
        { words: 'Yes', leads: 'do', act: yes },
        { words: 'No', leads: 'leave' },
        { words: 'Not sure', leads: 'leave' },
      ],
    });
  }
  return noteBid(lot, {
    action: 'proxy-withdrawn',
    cents: proxy,
    at: circumstances.now,
    ...(released === true && { says: 'accepted' as const }),
  });
}

function decideRisk(lot: LotState, why: string, { now, work }: Circumstances): Decision {
  const { bid, maxBid } = work(lot);
  if (bid.is !== 'over-max' || bid.than === 'plan' || maxBid === undefined)
    return refuseAct('No bid of yours is over max, so there is no risk to accept.');
  if (why.trim() === '') {
    return askFirst({
      code: 'why',
      words: 'Why?',
      choices: [
        {
          words: 'Accept the risk',
          leads: 'do',
          act: { do: 'accept-risk', why },
          fill: { what: 'reason', label: 'Why' },
        },
        { words: 'Cancel', leads: 'leave' },
      ],
    });
  }
  const { cents } = bid.bid;
  return write(
    [{ subject: subjectOfLot(lot.id), happening: { kind: 'risk-accepted', cents, maxBidCents: maxBid, why, at: now } }],
    `${formatMoney(cents)} stays, over max`,
  );
}

function noteBid(lot: LotState, bid: BidAction): Decision {
  return write([{ subject: subjectOfLot(lot.id), happening: { kind: 'bid-noted', bid } }], sayAction(bid));
}

function write(changes: readonly Change[], words: string): Decision {
  return { as: 'write', changes, words };
}

function priceChange(lot: LotState, cents: Cents): Change {
  const evidence = { priceNow: { from: 'typed' as const, text: '', sure: 'certain' as const } };
  return {
    subject: subjectOfLot(lot.id),
    happening: { kind: 'lot-changed', set: { priceNow: cents }, clear: [], evidence },
  };
}
