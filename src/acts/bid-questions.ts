import type { OwnBids } from '../domain/bid/own-bids.ts';
import { overStop, stopOf } from '../domain/bid/stop-of.ts';
import { type Cents, cents } from '../domain/money/cents.ts';
import { formatMoney } from '../domain/money/format-money.ts';
import { priceGrid } from '../domain/price/price-grid.ts';
import { farAbove } from '../domain/sale/result-doubt.ts';
import { lastReading } from '../domain/time/close-time.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { BidMade, QuestionCode } from './act.ts';
import { type Circumstances, type Worked, when } from './circumstances.ts';
import type { Choice, Question } from './question.ts';

interface Known {
  readonly own: OwnBids;
  readonly worked: Worked;
  readonly circumstances: Circumstances;
}

const CHANGE: Choice = { words: 'Change it', leads: 'edit' };

/** What has to be answered before a bid is noted, the weightiest first; null when nothing speaks against it. */
export function bidQuestion(lot: LotState, act: BidMade, known: Known): Question | null {
  const isSure = (code: QuestionCode) => act.sure?.includes(code) === true;
  const checks: readonly (readonly [QuestionCode, () => Question | null])[] = [
    ['after-close', () => afterClose(lot, act, known)],
    ['far-off', () => farOff(lot, act, known)],
    ['off-step', () => offStep(act, known)],
    ['changed', () => changed(act, known)],
    ['price', () => belowPrice(lot, act, known)],
    ['over-max', () => overMax(act, known)],
    ['over-plan', () => overPlan(act, known)],
  ];
  for (const [code, check] of checks) {
    const question = isSure(code) ? null : check();
    if (question !== null) return question;
  }
  return null;
}

const sureOf = (act: BidMade, code: QuestionCode): BidMade => ({ ...act, sure: [...(act.sure ?? []), code] });

function afterClose({ facts }: LotState, act: BidMade, { circumstances }: Known): Question | null {
  const { close } = facts;
  if (close === undefined || act.beforeClose === true || lastReading(close) > circumstances.now) return null;
  const closed = when(lastReading(close), circumstances);
  return {
    code: 'after-close',
    words: `It closed at ${closed}. Did you place ${formatMoney(act.cents)} before?`,
    choices: [
      { words: 'Yes, before the close', leads: 'do', act: { ...act, beforeClose: true } },
      { words: 'No', leads: 'leave' },
    ],
  };
}

/** A zero too many is a slip, not a risk to accept: so plain Enter does not pass it. */
function farOff({ facts }: LotState, act: BidMade, { worked: { maxBid } }: Known): Question | null {
  if (!farAbove(act.cents, [maxBid ?? undefined, facts.priceNow, facts.proxy])) return null;
  const beside = typeof maxBid === 'number' ? `your max bid of ${formatMoney(maxBid)}` : 'everything known of it';
  return {
    code: 'far-off',
    words: `${formatMoney(act.cents)} is far over ${beside}. Check the amount.`,
    choices: [CHANGE, { words: `It is ${formatMoney(act.cents)}`, leads: 'do', act: sureOf(act, 'far-off') }],
  };
}

/** A venue turns down a proxy between two of its steps. A live bid follows the price, wherever that stands. */
function offStep(act: BidMade, { worked: { increments } }: Known): Question | null {
  if (increments === undefined || act.how === 'live') return null;
  const step = increments.findLast(({ fromCents }) => fromCents <= act.cents)?.stepCents;
  const grid = priceGrid(increments, act.cents * 2);
  const above = grid.priceAt(grid.indexFrom(act.cents));
  if (step === undefined || above === act.cents) return null;
  const below = grid.priceAt(Math.max(0, grid.indexFrom(act.cents) - 1));
  const other = (amount: Cents): Choice => ({
    words: formatMoney(amount),
    leads: 'do',
    act: { ...act, cents: amount },
  });
  const both = [below, above].filter((amount) => amount > 0);
  return {
    code: 'off-step',
    words: `Bids go in steps of ${formatMoney(step)}. Did you place ${both.map((amount) => formatMoney(amount)).join(' or ')}?`,
    choices: [
      ...both.map(other),
      { words: `${formatMoney(act.cents)} as typed`, leads: 'do', act: sureOf(act, 'off-step') },
      CHANGE,
    ],
  };
}

/** What was typed into an older screen may mean the opposite of what it says there. */
function changed(act: BidMade, { own }: Known): Question | null {
  const stands = own.proxy?.cents;
  if (act.how === 'live' || act.was === undefined || stands === undefined || act.was === stands) return null;
  return {
    code: 'changed',
    words: `The proxy is now ${formatMoney(stands)}. ${act.cents < stands ? 'Cut' : 'Raise'} it to ${formatMoney(act.cents)}?`,
    choices: [
      { words: 'Yes', leads: 'do', act: sureOf({ ...act, was: stands }, 'changed') },
      { words: 'No', leads: 'leave' },
    ],
  };
}

function belowPrice({ facts }: LotState, act: BidMade, { own, worked, circumstances }: Known): Question | null {
  const { price } = worked.bid;
  if (facts.sealed !== undefined || act.price !== undefined) return null;
  if (price === undefined || price.cents < act.cents || price.cents === 0) return null;
  const yes = sureOf(act, 'price');
  const covered = own.proxy !== undefined && own.proxy.cents >= price.cents && act.cents < own.proxy.cents;
  if (covered)
    return {
      code: 'price',
      words: `Price was ${formatMoney(price.cents)} under your proxy, so it may be yours. Did the venue take the cut to ${formatMoney(act.cents)}?`,
      choices: [{ words: 'Yes', leads: 'do', act: yes }, { words: 'No', leads: 'leave' }, CHANGE],
    };
  return {
    code: 'price',
    words: `Price was ${formatMoney(price.cents)} at ${when(price.seenAt, circumstances)}. Is ${formatMoney(act.cents)} right?`,
    choices: [
      { words: 'Yes', leads: 'do', act: yes },
      CHANGE,
      { words: 'The price is wrong', leads: 'do', act: yes, fill: { what: 'amount', label: 'Price now' } },
    ],
  };
}

function overMax(act: BidMade, { worked: { maxBid } }: Known): Question | null {
  if (maxBid === undefined || act.why !== undefined) return null;
  if (maxBid !== null && act.cents <= maxBid) return null;
  const kept = sureOf({ ...act, why: '' }, 'over-max');
  const reason = { what: 'reason', label: 'Why', optional: true } as const;
  if (act.offered === true && maxBid !== null)
    return {
      code: 'over-max',
      words: `Max bid is now ${formatMoney(maxBid)}. Did you place ${formatMoney(act.cents)}?`,
      choices: [
        { words: 'Yes, and why', leads: 'do', act: kept, fill: reason },
        { words: `I placed ${formatMoney(maxBid)}`, leads: 'do', act: { ...act, cents: maxBid } },
        { words: 'No', leads: 'leave' },
      ],
    };
  const words =
    maxBid === null
      ? `No price works for this car. Why ${formatMoney(act.cents)}?`
      : `${formatMoney(act.cents)} is ${formatMoney(cents(act.cents - maxBid))} over max. Why?`;
  return { code: 'over-max', words, choices: [{ words: 'Save', leads: 'do', act: kept, fill: reason }, CHANGE] };
}

/** Past the plan, one car takes the cash of others: whoever wants that bids on it without the plan. */
function overPlan(act: BidMade, { worked }: Known): Question | null {
  const stop = stopOf(worked);
  if (stop.than === 'max' || act.ignorePlan === true || act.why !== undefined) return null;
  const over = overStop(act.cents, stop);
  if (over === 0) return null;
  const what =
    over === null ? 'The plan leaves this lot out.' : `${formatMoney(act.cents)} is ${formatMoney(over)} over plan.`;
  const { at } = stop;
  return {
    code: 'over-plan',
    words: `${what} Bid on it without the plan?`,
    choices: [
      { words: 'Yes, ignore the plan for it', leads: 'do', act: { ...act, ignorePlan: true } },
      ...(typeof at === 'number'
        ? [{ words: `I placed ${formatMoney(at)}`, leads: 'do' as const, act: { ...act, cents: at } }]
        : []),
      CHANGE,
    ],
  };
}
