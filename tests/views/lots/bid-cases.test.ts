import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { badgeFor } from '../../../src/background/badge-for.ts';
import { needsBid } from '../../../src/domain/alerts/alert-lot.ts';
import { askWords } from '../../../src/domain/bid/ask-words.ts';
import type { BidState } from '../../../src/domain/bid/bid-state.ts';
import { bidWords } from '../../../src/domain/bid/bid-words.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { needOf, wantsAct } from '../../../src/domain/week/closing-need.ts';
import { alertLot } from '../../../src/views/lots/alert-lots.ts';
import { bidsUnder } from '../../../src/views/lots/bids.ts';
import { orderLots, type ShowKey } from '../../../src/views/lots/list-order.ts';
import { rowWords } from '../../../src/views/lots/row-words.ts';
import { type BidEvent, BidHistory, BOISE, dollars } from './bid-history.ts';

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
const setup = startingSetup(BOISE);

const NAMES: Record<BidState['is'], string> = {
  none: 'none',
  standing: 'standing',
  outbid: 'outbid',
  'over-max': 'over max',
  pending: 'pending',
  ended: 'ended',
};

function looked({ events, lookAt }: Pick<BidCase, 'events' | 'lookAt'>) {
  const history = new BidHistory(events);
  const bids = bidsUnder(setup, history.standingOf);
  const now = instant(Date.parse(lookAt));
  const { lot } = history;
  return { lot, now, works: { of: history.standingOf, bids }, state: bids.at(lot, now) };
}

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
    const { lot, now, works, state } = looked(one);
    const open = state.is !== 'ended';
    const shows = (show: ShowKey) =>
      orderLots([lot], { show, sort: 'todo', descending: false, search: '' }, works, now).length === 1;
    expect({ open: shows('open'), closed: shows('closed') }).toEqual({ open, closed: !open });
    expect({ none: shows('unplaced'), outbid: shows('outbid'), over: shows('over-max') }).toEqual({
      none: state.is === 'none',
      outbid: state.is === 'outbid',
      over: state.is === 'over-max',
    });
    const row = rowWords(lot, { standing: works.of(lot), bids: works.bids, doubts: [], setup });
    const isOver = row.ended.at !== undefined && row.ended.at <= now;
    expect(isOver).toBe(!open);
    if (!open) expect(row.ended.words).toBe(bidWords(state));
    else if (state.is !== 'none' && state.loud && !state.mayHaveClosed)
      expect(row.todo).toEqual({ words: bidWords(state), as: 'act' });
    const need = needOf({ bid: state, inRush: false, offHands: false });
    expect(wantsAct(need)).toBe(state.loud);
    const alert = alertLot(lot, works);
    if (alert === null) return;
    expect(needsBid(alert)).toBe(lot.sale?.result === undefined && works.bids.open(lot).loud);
    const badge = badgeFor({ lots: [alert], due: [], allowed: true, now });
    const near = state.is !== 'none' || (lot.facts.close?.instant ?? 0) <= now + 86_400_000;
    expect(badge.text !== '').toBe(state.loud && near);
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
