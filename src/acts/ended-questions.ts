import type { OwnBids } from '../domain/bid/own-bids.ts';
import { personFirst } from '../domain/bid/person-words.ts';
import { formatMoney } from '../domain/money/format-money.ts';
import { resultDoubt } from '../domain/sale/result-doubt.ts';
import { amountOf, sayResult } from '../domain/sale/result-words.ts';
import { lastReading } from '../domain/time/close-time.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Ended, QuestionCode } from './act.ts';
import { type Circumstances, type Worked, when } from './circumstances.ts';
import type { Choice, Question } from './question.ts';

interface Known {
  readonly own: OwnBids;
  readonly worked: Worked;
  readonly circumstances: Circumstances;
}

const CHANGE: Choice = { words: 'Change it', leads: 'edit' };
const CANCEL: Choice = { words: 'Cancel', leads: 'leave' };

/** What has to be answered before a result is noted, the weightiest first; null when nothing speaks against it. */
export function endedQuestion(lot: LotState, act: Ended, known: Known): Question | null {
  const isSure = (code: QuestionCode) => act.sure?.includes(code) === true;
  const checks: readonly (readonly [QuestionCode, () => Question | null])[] = [
    ['other-result', () => otherResult(lot, act, known)],
    ['early', () => early(lot, act, known)],
    ['month-closed', () => monthClosed(lot, act, known)],
    ['far-off', () => farOff(lot, act, known)],
    ['below-price', () => belowPrice(lot, act, known)],
    ['was-in', () => wasIn(lot, act, known)],
    ['who-bid', () => whoBid(act, known)],
  ];
  for (const [code, check] of checks) {
    const question = isSure(code) ? null : check();
    if (question !== null) return question;
  }
  return null;
}

const sureOf = (act: Ended, code: QuestionCode): Ended => ({ ...act, sure: [...(act.sure ?? []), code] });

function otherResult({ sale }: LotState, act: Ended, { circumstances }: Known): Question | null {
  const noted = sale?.result;
  if (act.corrects === undefined || (noted?.entry ?? null) === act.corrects) return null;
  if (noted === undefined) return null;
  const said = sayResult(noted.result);
  return {
    code: 'other-result',
    words: `${personFirst(noted.author)} noted ${lower(said)} at ${when(noted.notedAt, circumstances)}. Which is right?`,
    choices: [
      { words: said, leads: 'leave' },
      { words: sayResult(act.result), leads: 'do', act: { ...act, corrects: noted.entry } },
    ],
  };
}

/** A sale takes a lot out whenever it likes; everything else comes with the close, unless it was said to have ended early. */
function early({ facts: { close }, sale }: LotState, act: Ended, { circumstances }: Known): Question | null {
  const { now } = circumstances;
  if (close === undefined || act.early === true || act.closedAt !== undefined) return null;
  if (act.result.ended === 'withdrawn' || sale?.result?.early === true || lastReading(close) <= now) return null;
  const last = lastReading(close);
  const endedEarly: Choice = { words: 'Ended early', leads: 'do', act: { ...act, early: true } };
  const [first, second] = [close.instant, last].map((at) => when(at, circumstances));
  if (close.instant <= now)
    return {
      code: 'which-close',
      words: `Closes at ${first} or at ${second}. Has it closed?`,
      choices: [
        { words: `Closed at ${first}`, leads: 'do', act: { ...act, closedAt: close.instant } },
        { words: `Closes at ${second}`, leads: 'do', act: { do: 'pick-close', at: last } },
        endedEarly,
      ],
    };
  return {
    code: 'early',
    words: `It closes at ${second}. Did it end early?`,
    choices: [endedEarly, { words: 'No', leads: 'leave' }],
  };
}

function monthClosed({ sale }: LotState, act: Ended, { circumstances }: Known): Question | null {
  if (circumstances.monthClosed !== true || sale?.result === undefined) return null;
  return {
    code: 'month-closed',
    words: 'This month is closed. The change will show as a correction.',
    choices: [{ words: 'Change it', leads: 'do', act: sureOf(act, 'month-closed') }, CANCEL],
  };
}

function farOff({ facts }: LotState, act: Ended, { worked: { maxBid } }: Known): Question | null {
  const doubt = resultDoubt(act.result, facts, maxBid ?? null);
  if (doubt === null) return null;
  return {
    code: 'far-off',
    words: doubt,
    choices: [CHANGE, { words: `${sayResult(act.result)}`, leads: 'do', act: sureOf(act, 'far-off') }],
  };
}

/** An open sale does not go down, so nobody wins below a price that was seen. */
function belowPrice({ facts }: LotState, act: Ended, { worked, circumstances }: Known): Question | null {
  const amount = amountOf(act.result);
  const { price } = worked.bid;
  if (act.result.ended !== 'won' || amount === undefined || facts.sealed !== undefined) return null;
  if (price === undefined || amount >= price.cents) return null;
  return {
    code: 'below-price',
    words: `Price was ${formatMoney(price.cents)} at ${when(price.seenAt, circumstances)}. Won at ${formatMoney(amount)}?`,
    choices: [{ words: 'Yes', leads: 'do', act: sureOf(act, 'below-price') }, CHANGE, CANCEL],
  };
}

/** A loss below our own bid says that it may not have been in. */
function wasIn({ facts }: LotState, act: Ended, { own: { binding } }: Known): Question | null {
  const amount = amountOf(act.result);
  if (act.result.ended !== 'lost' || amount === undefined || act.bidWasIn !== undefined) return null;
  if (binding === undefined || amount >= binding.cents) return null;
  const what = facts.sealed === undefined && binding.how === 'proxy' ? 'proxy' : 'bid';
  return {
    code: 'was-in',
    words: `Your ${what} was ${formatMoney(binding.cents)}. Was it in?`,
    choices: [
      { words: 'Yes, it was in', leads: 'do', act: { ...act, bidWasIn: true } },
      { words: 'No, it was not in', leads: 'do', act: { ...act, bidWasIn: false } },
      CHANGE,
    ],
  };
}

/**
 * A win above our own bids, or without any, lacks the bid that won it. Whoever has answered something already is not asked a
 * second time: the question stands beside the lot afterwards.
 */
function whoBid(act: Ended, { own: { binding }, circumstances }: Known): Question | null {
  const amount = amountOf(act.result);
  if (act.result.ended !== 'won' || amount === undefined || (act.sure ?? []).length > 0) return null;
  if (act.bidder !== undefined || act.by === 'live' || (binding !== undefined && binding.cents >= amount)) return null;
  const { author, people } = circumstances;
  const known = [...new Set([author, ...people])].filter((name) => name !== '').slice(0, 4);
  return {
    code: 'who-bid',
    words:
      binding === undefined
        ? 'No bid was noted. Who bid?'
        : `Your ${binding.how === 'proxy' ? 'proxy' : 'bid'} was ${formatMoney(binding.cents)}. Who bid ${formatMoney(amount)}?`,
    choices: [
      ...known.map(
        (who): Choice => ({
          words: personFirst(who),
          leads: 'do',
          act: { ...act, bidder: who, liveBy: who, by: 'live' },
        }),
      ),
      {
        words: 'Somebody else',
        leads: 'do',
        act: { ...act, by: 'live' },
        fill: { what: 'person', label: 'Who bid' },
      },
      { words: 'Leave it open', leads: 'do', act: sureOf(act, 'who-bid') },
      CHANGE,
    ],
  };
}

const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);
