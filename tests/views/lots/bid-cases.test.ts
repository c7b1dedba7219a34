import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { askWords } from '../../../src/domain/bid/ask-words.ts';
import type { BidState } from '../../../src/domain/bid/bid-state.ts';
import { bidWords } from '../../../src/domain/bid/bid-words.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { type BidEvent, BidHistory, BOISE, dollars } from './bid-history.ts';
import { look, tellsTheSame } from './every-door.ts';

interface BidCase {
  readonly id: string;
  readonly why: string;
  readonly events: readonly BidEvent[];
  readonly lookAt: string;
  readonly expect: {
    readonly state: string;
    readonly at?: number;
    readonly ours?: boolean | 'unknown';
    readonly alsoOverMax?: boolean;
    readonly loud: boolean;
    readonly words: string;
    readonly asks?: string;
    readonly accept?: { readonly state?: readonly string[]; readonly loud?: 'must' | 'either' };
  };
}

/** Written by somebody who had not read the code; see the README beside it. */
const FIXTURE = new URL('../../fixtures/bids/states.json', import.meta.url);
const cases: readonly BidCase[] = JSON.parse(readFileSync(FIXTURE, 'utf8'));
const named = cases.map((one) => [`${one.id}: ${one.why}`, one] as const);

const NAMES: Record<BidState['is'], string> = {
  none: 'none',
  standing: 'standing',
  outbid: 'outbid',
  'over-max': 'over max',
  pending: 'pending',
  ended: 'ended',
};

const looked = ({ events, lookAt }: Pick<BidCase, 'events' | 'lookAt'>) =>
  look(new BidHistory(events), Date.parse(lookAt));

describe('the state of a bid', () => {
  test.each(named)('%s', (_, { expect: wanted, ...one }) => {
    const { state } = looked(one);
    const { accept = {} } = wanted;
    expect([wanted.state, ...(accept.state ?? [])]).toContain(NAMES[state.is]);
    if (accept.loud !== 'either') expect(state.loud).toBe(accept.loud === 'must' ? true : wanted.loud);
    if (NAMES[state.is] !== wanted.state) return;
    expect(amountShown(state)).toEqual(wanted.at === undefined ? amountShown(state) : dollars(wanted.at));
    if (wanted.at !== undefined) expect(bidWords(state)).toContain(formatMoney(dollars(wanted.at)));
    if (wanted.ours !== undefined) expect('ours' in state ? state.ours : undefined).toBe(wanted.ours);
    expect(state.is === 'outbid' && state.alsoOverMax).toBe(wanted.alsoOverMax ?? false);
  });

  test.each(named.filter(([, one]) => one.expect.asks !== undefined))('asks what only a person knows: %s', (_, one) => {
    const { state } = looked(one);
    const asked = state.asks.map((ask) => plain(askWords(ask, BOISE)));
    // Word for word where there is one way to say it; else at least about the same amounts.
    const wanted = plain(one.expect.asks ?? '');
    const sameMoney = (text: string) => (text.match(/\$[\d,]+/g) ?? []).every((money) => wanted.includes(money));
    expect(asked.filter((text) => text === wanted || sameMoney(text))).not.toEqual([]);
  });
});

const plain = (text: string) => text.replaceAll('’', "'");

/** The amount that a state is about. */
function amountShown(state: BidState): number | undefined {
  switch (state.is) {
    case 'none':
      return undefined;
    case 'outbid':
      return state.at;
    case 'ended': {
      const result = state.result?.result;
      return result !== undefined && 'hammerCents' in result ? result.hammerCents : undefined;
    }
    default:
      return state.bid.cents;
  }
}

describe('every door tells the same', () => {
  test.each(named)('%s', (_, one) => {
    tellsTheSame(looked(one));
  });
});

test('a state hangs on when things happened, not on the order in which they are told', () => {
  for (const one of cases) {
    const times = one.events.map(({ at }) => at);
    if (new Set(times).size < times.length) continue;
    const { state } = looked(one);
    for (const events of [one.events.toReversed(), [...one.events.slice(2), ...one.events.slice(0, 2)]])
      expect(looked({ ...one, events }).state, one.id).toEqual(state);
  }
});
