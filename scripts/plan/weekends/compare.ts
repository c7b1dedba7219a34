import { marketOf } from '../../../src/domain/market/market.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { Dice } from '../../reader/dice.ts';
import { hindsight, type Played, playFew, playMax, playPlan } from './policies.ts';
import { knownMarkets, pastClosings, type Truth, weekendLots } from './weekend.ts';

/** One kind of weekend that is played many times. */
export interface Cell {
  readonly lots: number;
  /** Cash as a share of what bidding everywhere would spend if there were always enough. */
  readonly share: number;
  /** Prices against those that were learned from. */
  readonly off: number;
  readonly weekendSd: number;
}

/** Sums over the weekends of a cell; whole cents. */
export interface Compared {
  readonly cell: Cell;
  readonly weekends: number;
  readonly plan: number;
  readonly max: number;
  readonly few: number;
  /** The plan of somebody who knows the true odds and each weekend's level. */
  readonly knowing: number;
  readonly hindsight: number;
  /** Weekends in which the plan earned less than bidding the max everywhere. */
  readonly lost: number;
  /** Standard error of the plan's gain over max everywhere, as a share of the latter. */
  readonly gainError: number;
}

/** Closings that the rivals are learned from. */
const PAST = 120;
/** Rivals as they are when about one lot in eight is won at the max bid. */
const MIDDLE = -0.17;

/** With the odds known there is one level in place of about ten, which leaves time for a finer plan. */
const FINER = 20;

/** Plays a cell's weekends, each with closings of its own to learn from. */
export function compareOn(cell: Cell, weekends: number, seed: number): Compared {
  const truth: Truth = { middle: MIDDLE, off: cell.off, weekendSd: cell.weekendSd };
  const knownAt = knownMarkets(truth);
  const cash = cell.share * spentEverywhere(cell.lots);
  const sum = { plan: 0, max: 0, few: 0, knowing: 0, hindsight: 0, lost: 0 };
  const gains: number[] = [];
  for (let i = 0; i < weekends; i++) {
    const dice = new Dice(seed + i);
    const market = marketOf(pastClosings(dice, truth, PAST), instant(1));
    const lots = weekendLots(dice, truth, cell.lots);
    const [plan, max]: [Played, Played] = [playPlan(lots, cash, market), playMax(lots, cash)];
    sum.plan += plan.profit;
    sum.max += max.profit;
    sum.few += playFew(lots, cash, market).profit;
    sum.knowing += playPlan(lots, cash, knownAt(lots[0]?.level ?? 0), FINER).profit;
    sum.hindsight += hindsight(lots, cash);
    if (plan.profit < max.profit) sum.lost++;
    gains.push(plan.profit - max.profit);
  }
  const mean = (sum.plan - sum.max) / weekends;
  const spread = Math.sqrt(gains.reduce((total, gain) => total + (gain - mean) ** 2, 0) / weekends);
  return { cell, weekends, ...sum, gainError: spread / Math.sqrt(weekends) / (sum.max / weekends) };
}

/** What bidding the max on so many lots spends on average, with beliefs that are right; the same for every cell. */
function spentEverywhere(lots: number): number {
  const dice = new Dice(7);
  const rounds = 400;
  let spent = 0;
  for (let i = 0; i < rounds; i++) {
    spent += playMax(weekendLots(dice, { middle: MIDDLE, off: 0, weekendSd: 0 }, 40), 1e12).spent;
  }
  return Math.round((spent / rounds / 40) * lots);
}
