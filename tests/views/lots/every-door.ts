import { expect } from 'vitest';
import { badgeFor } from '../../../src/background/badge-for.ts';
import { needsBid } from '../../../src/domain/alerts/alert-lot.ts';
import type { BidState } from '../../../src/domain/bid/bid-state.ts';
import { bidWords } from '../../../src/domain/bid/bid-words.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';
import { needOf, wantsAct } from '../../../src/domain/week/closing-need.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { alertLot } from '../../../src/views/lots/alert-lots.ts';
import { bidsUnder } from '../../../src/views/lots/bids.ts';
import type { ShowKey } from '../../../src/views/lots/list-filter.ts';
import { orderLots } from '../../../src/views/lots/list-order.ts';
import { rowWords } from '../../../src/views/lots/row-words.ts';
import type { LotWorks } from '../../../src/views/lots/standing.ts';
import { isOpenClosing } from '../../../src/views/results/open-closings.ts';
import { type BidHistory, BOISE } from './bid-history.ts';

const setup = startingSetup(BOISE);

export interface Looked {
  readonly lot: LotState;
  readonly now: Instant;
  readonly works: LotWorks;
  readonly state: BidState;
}

/** A lot with its history, looked at at a moment. */
export function look(history: BidHistory, at: number): Looked {
  const bids = bidsUnder(setup, history.standingOf);
  const now = instant(at);
  const { lot } = history;
  return { lot, now, works: { of: history.standingOf, bids }, state: bids.at(lot, now) };
}

/** Holds list, filters, order, week, reminders, badge and the list of closings without a result to the one state. */
const by = () => () => null;

export function tellsTheSame({ lot, now, works, state }: Looked): void {
  const open = state.is !== 'ended';
  const shows = (show: ShowKey) =>
    orderLots([lot], { show, sort: 'todo', descending: false, search: '', byVenue: false }, { works, now, by })
      .length === 1;
  expect({ open: shows('open'), closed: shows('closed') }).toEqual({ open, closed: !open });
  // Without a max bid nobody can say whether there is room: such a lot stands under what is missing.
  const none = state.is === 'none' && works.of(lot).missing.length === 0;
  expect({
    unplaced: shows('unplaced'),
    noRoom: shows('no-room'),
    outbid: shows('outbid'),
    over: shows('over-max'),
  }).toEqual({
    unplaced: none && state.loud,
    noRoom: none && !state.loud,
    outbid: state.is === 'outbid',
    over: state.is === 'over-max',
  });
  inItsRow(lot, { now, works, state, open });
  const need = needOf({ bid: state, inRush: false, offHands: false });
  expect(wantsAct(need)).toBe(state.loud);
  expect(need === 'unsaid').toBe(state.is === 'ended' && state.result === undefined);
  const pending = lot.sale?.result?.result.ended === 'pending';
  const close = lot.facts.close?.instant;
  if (!pending) expect(isOpenClosing(lot, now)).toBe(need === 'unsaid');
  const alert = alertLot(lot, works);
  if (alert === null || close === undefined) return;
  expect(needsBid(alert)).toBe(lot.sale?.result === undefined && works.bids.open(lot).loud);
  const near = state.is !== 'none' || close <= now + DAY;
  const badge = badgeFor({ lots: [alert], due: [], allowed: true, now });
  expect(badge.text !== '').toBe(state.loud && near);
}

function inItsRow(lot: LotState, { now, works, state, open }: Omit<Looked, 'lot'> & { readonly open: boolean }): void {
  const row = rowWords(lot, { standing: works.of(lot), bids: works.bids, doubts: [], setup });
  expect(row.ended.at !== undefined && row.ended.at <= now).toBe(!open);
  if (state.is === 'ended') expect(row.ended.words).toBe(bidWords(state));
  else if (state.is !== 'none' && state.loud && !state.mayHaveClosed)
    expect(row.todo).toMatchObject({ words: bidWords(state), as: 'act', act: 'bid' });
}
