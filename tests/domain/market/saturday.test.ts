import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Closing, Ending } from '../../../src/domain/market/closing.ts';
import { marketOf } from '../../../src/domain/market/market.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { dollars } from '../plan/made-up.ts';

interface Past {
  readonly result: 'won' | 'lost';
  readonly zero_profit_hammer: number;
  readonly increment: number;
  readonly my_max: number;
  readonly price: number | null;
}
interface Step {
  readonly what: string;
  readonly level: number;
  readonly sd: number;
  readonly bids: Readonly<Record<string, number | null>>;
  readonly chance: Readonly<Record<string, number>>;
}
const day: { readonly history: readonly Past[]; readonly steps: readonly Step[] } = JSON.parse(
  readFileSync('tests/fixtures/plan-saturday.json', 'utf8'),
);
const group = { carClass: '', title: '', seller: '', venue: '' };
const WEEKEND = instant(1);

/** The hammer price at which each lot earns nothing, and its increment; dollars. */
const LOTS: Readonly<Record<string, readonly [zero: number, step: number]>> = {
  L01: [9_400, 250],
  L02: [11_800, 250],
  L03: [8_600, 500],
  L04: [10_200, 500],
  L05: [7_400, 250],
  L06: [13_500, 500],
  L07: [9_900, 500],
  L08: [6_800, 250],
  L09: [10_600, 500],
  L10: [8_900, 500],
  L11: [12_400, 250],
  L12: [7_900, 250],
  L13: [9_700, 250],
  L14: [11_000, 250],
};
const zeroOf = (lot: string): number => LOTS[lot]?.[0] ?? 0;

/** What each step added, by the bid of the step before. */
const lost = (lot: string, price?: number) => ({ lot, ending: price === undefined ? UNKNOWN : endedAt('lost', price) });
const won = (lot: string, price: number) => ({ lot, ending: endedAt('won', price) });
const UNKNOWN: Ending = { was: 'lost-unknown' };
const endedAt = (was: 'won' | 'lost', price: number): Ending => ({ was, price: dollars(price) });
const ADDED = [
  null,
  lost('L01', 8_900),
  lost('L02', 11_500),
  null,
  lost('L04'),
  won('L05', 6_250),
  null,
  null,
  lost('L07', 9_500),
  null,
  lost('L08'),
  won('L09', 8_500),
  lost('L10', 9_500),
  null,
  lost('L11', 12_250),
  won('L12', 6_250),
  lost('L13', 9_500),
  won('L14', 8_750),
];

const history = day.history.map(
  ({ result, zero_profit_hammer, increment, my_max, price }): Closing => ({
    group,
    at: instant(0),
    zeroProfit: dollars(zero_profit_hammer),
    step: dollars(increment),
    bid: dollars(my_max),
    ending: price === null ? UNKNOWN : endedAt(result, price),
  }),
);

describe('a written Saturday, close by close', () => {
  let market = marketOf(history, WEEKEND);
  test.each(day.steps.map((step, i) => [step.what, step, i] as const))('%s', (_, step, i) => {
    const added = ADDED[i];
    if (added) {
      // A lot that is gone with another at the same minute had its bid two steps before.
      const bid = [1, 2].map((back) => day.steps[i - back]?.bids[added.lot]).find((known) => known != null) ?? 0;
      const { lot, ending } = added;
      const [zero, increment] = LOTS[lot] ?? [0, 0];
      market = market.after([
        { group, at: instant(2), zeroProfit: dollars(zero), step: dollars(increment), bid: dollars(bid), ending },
      ]);
    }
    expect(market.level.mean).toBeCloseTo(step.level, 3);
    expect(market.level.sd).toBeCloseTo(step.sd, 3);
    const { below } = market.curveOf(group);
    for (const [lot, bid] of Object.entries(step.bids)) {
      if (bid === null) continue;
      expect(Math.abs(below(Math.log(bid / zeroOf(lot))) - (step.chance[lot] ?? 0))).toBeLessThan(0.002);
    }
  });
});
