import type { LotAct } from '../../acts/act.ts';
import type { Choice, Question } from '../../acts/question.ts';
import { askWords } from '../../domain/bid/ask-words.ts';
import type { BidAsk } from '../../domain/bid/bid-ask.ts';
import type { BidState } from '../../domain/bid/bid-state.ts';
import { person } from '../../domain/bid/person-words.ts';
import { tellApart } from '../../domain/close/say-close.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { sayResult } from '../../domain/sale/result-words.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { EntryId } from '../../journal/ids.ts';

interface Noted {
  /** The entry of the result that is noted. */
  readonly result?: EntryId | undefined;
  /** Who may have bid. */
  readonly people: readonly string[];
  readonly zone: Zone;
}

/** The questions that the state of a bid leaves open, each with its answers as acts; those that a screen asks anyway are left out. */
export function stateQuestions(state: BidState, noted: Noted): readonly Question[] {
  return state.asks.flatMap((ask): Question[] => {
    const choices = choicesFor(ask, state, noted);
    return choices.length === 0 ? [] : [{ code: 'state', words: askWords(ask, noted.zone), choices }];
  });
}

const yes = (act: LotAct, words = 'Yes'): Choice => ({ words, leads: 'do', act });
const go = (words: string): Choice => ({ words, leads: 'go' });
const bid = (cents: Cents): LotAct => ({ do: 'bid', how: 'proxy', cents, sure: ['price', 'off-step', 'far-off'] });
const says = (word: 'accepted' | 'high-bidder' | 'outbid' | 'not-in', cents?: Cents): LotAct => ({
  do: 'saw',
  what: 'confirmation-seen',
  says: word,
  cents,
});
const typedPrice = (cents: Cents): Choice => ({
  words: 'Save the price',
  leads: 'do',
  act: { do: 'price', cents },
  fill: { what: 'amount', label: 'Price now' },
});

function choicesFor(ask: BidAsk, state: BidState, noted: Noted): readonly Choice[] {
  switch (ask.ask) {
    case 'price-now':
      return [typedPrice(ask.price), yes(says('high-bidder', ask.bid), 'The venue shows me as high bidder')];
    case 'which-price':
      return [ask.was, ask.now].map((cents) => yes({ do: 'price', cents }, formatMoney(cents)));
    case 'high-bidder':
      return [yes(says('high-bidder', ask.price)), yes(says('outbid', ask.price), 'No')];
    case 'cut-taken':
      return [yes(says('accepted', ask.bid))];
    case 'raise-right':
      return [typedPrice(ask.price), yes(says('high-bidder', ask.bid), 'The venue shows me as high bidder')];
    case 'went-in':
      return [yes(says('accepted', ask.bid)), yes(says('not-in', ask.bid), 'No')];
    case 'live-stands':
      return [yes(says('not-in', ask.bid), 'It was released'), yes(says('accepted', ask.bid), 'It still stands')];
    case 'which-bid':
      return ask.bids.map(({ cents, by }) => yes(bid(cents), `${formatMoney(cents)} by ${person(by)}`));
    case 'replaced':
      return [yes(says('accepted', ask.now)), yes(bid(ask.was), `No, ${formatMoney(ask.was)} stands`)];
    case 'released':
      return [yes({ do: 'withdraw', released: true })];
    case 'sale-moved':
      return [
        yes(says('accepted', state.own.binding?.cents)),
        yes({ do: 'withdraw', released: true }, 'No, it is out'),
      ];
    case 'which-close':
      return tellApart([ask.first, ask.last], noted.zone).map((words, i) =>
        yes({ do: 'pick-close', at: i === 0 ? ask.first : ask.last }, words),
      );
    case 'no-close':
      return [go('Set the close')];
    case 'no-max-bid':
      return [go('Enter retail estimate')];
    case 'was-in':
    case 'who-bid':
    case 'ended-early':
    case 'which-result':
      return endChoices(ask, state, noted);
    default:
      // How it ended, and what to do about a bid over max, are buttons of their own.
      return [];
  }
}

function endChoices(
  ask: Extract<BidAsk, { ask: 'was-in' | 'who-bid' | 'ended-early' | 'which-result' }>,
  state: BidState,
  { result: entry, people }: Noted,
): readonly Choice[] {
  const result = state.is === 'ended' ? state.result?.result : undefined;
  if (result === undefined) return [];
  const ended = { do: 'ended', result, corrects: entry ?? null, sure: ['below-price', 'far-off'] } as const;
  switch (ask.ask) {
    case 'was-in':
      return [
        yes({ ...ended, bidWasIn: true }, 'Yes, it was in'),
        yes({ ...ended, bidWasIn: false }, 'No, it was not in'),
      ];
    case 'who-bid':
      return [
        ...people.map((who) => yes({ ...ended, bidder: who, liveBy: who, by: 'live' }, who)),
        {
          words: 'Somebody else',
          leads: 'do',
          act: { ...ended, by: 'live' },
          fill: { what: 'person', label: 'Who bid' },
        },
      ];
    case 'ended-early':
      return [yes({ ...ended, early: true }, 'Yes, it ended early')];
    case 'which-result':
      return ask.results.map((one) =>
        yes({ ...ended, result: one, sure: ['below-price', 'far-off', 'was-in', 'who-bid'] }, sayResult(one)),
      );
  }
}
