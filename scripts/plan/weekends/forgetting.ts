import { beliefAfter, STARTING_PRIOR } from '../../../src/domain/market/belief.ts';
import { addReading, emptyTable } from '../../../src/domain/market/limit-grid.ts';
import { closingWeight } from '../../../src/domain/market/market.ts';
import { readingOf } from '../../../src/domain/market/reading.ts';
import { rivalCurve } from '../../../src/domain/market/rival-curve.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';
import { Dice } from '../../reader/dice.ts';
import { bell, closingOf, GROUP, knownMarkets, STEP, trueLot } from './weekend.ts';

/** Half-lives that are tried, days; the last one never forgets. */
export const HALF_LIVES = [30, 60, 90, 180, 360, Number.POSITIVE_INFINITY];
/** How far the market's usual level wanders from one week to the next: standard deviation, in logarithms. */
export const DRIFTS = [0, 0.005, 0.01, 0.02];

const WEEKS = 104;
const A_WEEK = 2;
const MIDDLE = -0.17;
/** Bids at which the chance is judged, as logarithms against our zero-profit hammer. */
const BIDS: readonly number[] = [-0.2, -0.15, -0.1, -0.05, 0];

/**
 * How far the chance to win is off in the week after two years of closings, for each half-life: mean distance from the truth, in
 * points of a hundred.
 * @param drift how far the level wanders a week
 */
export function errorsOf(drift: number, worlds: number, seed: number): readonly number[] {
  const truth = { middle: MIDDLE, off: 0, weekendSd: 0 };
  const knownAt = knownMarkets(truth);
  const sums = HALF_LIVES.map(() => 0);
  for (let world = 0; world < worlds; world++) {
    const dice = new Dice(seed + world);
    const ended: { week: number; level: number }[] = [];
    let level = 0;
    for (let week = 0; week < WEEKS; week++) {
      for (let i = 0; i < A_WEEK; i++) ended.push({ week, level });
      level += drift * bell(dice);
    }
    const closings = ended.map(({ week, level: then }) => {
      const { lot, strongest, second } = trueLot(dice, truth, then, 0);
      const closing = closingOf(lot, lot.maxBid ?? STEP, strongest, second, dice.happens(0.2));
      return { ...closing, at: instant(week * 7 * DAY) };
    });
    const known = knownAt(level).curveOf(GROUP);
    const tables = HALF_LIVES.map(() => emptyTable());
    for (const closing of closings) {
      const reading = readingOf(closing);
      if (reading === undefined) continue;
      const says = emptyTable();
      addReading(says, reading);
      HALF_LIVES.forEach((halfLife, i) => {
        const weight = closingWeight(closing.at, instant(WEEKS * 7 * DAY), halfLife);
        const into = tables[i] ?? says;
        for (let at = 0; at < says.length; at++) into[at] = (into[at] as number) + weight * (says[at] as number);
      });
    }
    tables.forEach((table, i) => {
      const { below } = rivalCurve(beliefAfter(STARTING_PRIOR, table));
      const off = BIDS.reduce((sum, x) => sum + Math.abs(below(x) - known.below(x)), 0) / BIDS.length;
      sums[i] = (sums[i] ?? 0) + (100 * off) / worlds;
    });
  }
  return sums;
}

/** Prints what forgetting costs where nothing changes, and what it saves where the market wanders. */
export function sayForgetting(worlds = 30): void {
  const named = HALF_LIVES.map((days) => (Number.isFinite(days) ? `${days} days` : 'never forgets'));
  console.log(`| level wanders a week | ${named.join(' | ')} |`);
  console.log(`| -: |${' -: |'.repeat(HALF_LIVES.length)}`);
  for (const drift of DRIFTS) {
    const errors = errorsOf(drift, worlds, 5_000).map((error) => error.toFixed(1));
    console.log(`| ${drift * 100}% | ${errors.join(' | ')} |`);
  }
  console.log(
    '\nMean distance of the chance to win from the truth after two years of closings, two a week, in points of 100.',
  );
}
