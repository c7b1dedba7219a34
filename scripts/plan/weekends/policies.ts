import type { Market } from '../../../src/domain/market/market.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { chancesOf, type PricePoints, pricePoints } from '../../../src/domain/plan/price-points.ts';
import type { Bidding } from '../../../src/domain/plan/stage.ts';
import { workPlan } from '../../../src/domain/plan/worked-plan.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { closingOf, priceToWin, STEP, type TrueLot } from './weekend.ts';

/** Profit of a weekend by one way to bid; whole cents. */
export interface Played {
  readonly profit: number;
  readonly spent: number;
  readonly cars: number;
}

/** Bids on one lot with what is left; null for no bid. */
type BidFor = (lot: TrueLot, left: number) => number | null;

function play(
  lots: readonly TrueLot[],
  cash: number,
  bidFor: BidFor,
  seen?: (lot: TrueLot, bid: number | null) => void,
): Played {
  let left = cash;
  let [profit, cars] = [0, 0];
  for (const each of lots) {
    const bid = bidFor(each, left);
    if (bid !== null && bid >= each.strongest) {
      const price = Math.min(bid, priceToWin(each.strongest));
      left -= price + each.costs;
      profit += each.lot.zeroProfit - price;
      cars++;
      if (left < 0) throw new Error(`overspent by ${-left} cents on ${each.lot.name}`);
    }
    seen?.(each, bid);
  }
  return { profit, spent: cash - left, cars };
}

/** The highest price of the increments up to `price`. */
const onStep = (price: number): number => Math.floor(price / STEP) * STEP;

/** The max bid on every lot, as far as the cash reaches. */
export function playMax(lots: readonly TrueLot[], cash: number): Played {
  return play(lots, cash, ({ lot, costs }, left) => {
    const bid = onStep(Math.min(lot.maxBid ?? 0, left - costs));
    return bid > 0 ? bid : null;
  });
}

/** The max bid on the few that promise most for their money, so that all could be won. */
export function playFew(lots: readonly TrueLot[], cash: number, market: Market): Played {
  const { below } = market.curveOf(lots[0]?.lot.group ?? { carClass: '', title: '', seller: '', venue: '' });
  const worth = ({ lot, costs }: TrueLot) => {
    const bid = lot.maxBid ?? 0;
    return (below(Math.log(bid / lot.zeroProfit)) * (lot.zeroProfit - bid)) / (bid + costs);
  };
  let left = cash;
  const few = new Set<TrueLot>();
  for (const each of [...lots].sort((a, b) => worth(b) - worth(a))) {
    const cost = (each.lot.maxBid ?? 0) + each.costs;
    if (cost > left) continue;
    few.add(each);
    left -= cost;
  }
  return play(lots, cash, (each) => (few.has(each) ? (each.lot.maxBid ?? null) : null));
}

/** The most that could have been earned by somebody who knew every price: a knapsack. */
export function hindsight(lots: readonly TrueLot[], cash: number): number {
  const cells = Math.floor(cash / STEP);
  const best = new Float64Array(cells + 1);
  for (const { lot, strongest, costs } of lots) {
    const price = priceToWin(strongest);
    if (price > (lot.maxBid ?? 0)) continue;
    const cost = Math.ceil((price + costs) / STEP);
    for (let b = cells; b >= cost; b--) {
      best[b] = Math.max(best[b] as number, (best[b - cost] as number) + lot.zeroProfit - price);
    }
  }
  return best[cells] as number;
}

/** How coarse the plan is worked out here, and after how many closes it is made again unless something was won; the program does it after each. */
const COARSER = 150;
const AGAIN = 3;

/** The plan, made again after each win and every few closes with what those closes said of the weekend. */
export function playPlan(lots: readonly TrueLot[], cash: number, before: Market, coarser = COARSER): Played {
  let market = before;
  let unseen: ReturnType<typeof closingOf>[] = [];
  let bids: readonly (number | null)[] = [];
  let [from, won] = [0, true];
  let number = 0;
  return play(
    lots,
    cash,
    (_, left) => {
      if (won || number - from >= AGAIN) {
        market = market.after(unseen);
        unseen = [];
        bids = bidsNow(lots.slice(number), left, market, coarser);
        [from, won] = [number, false];
      }
      return bids[number - from] ?? null;
    },
    (each, bid) => {
      const closing = closingOf(each.lot, bid === null ? null : cents(bid), each.strongest, each.second);
      unseen.push(closing);
      won = closing.ending.was === 'won';
      number++;
    },
  );
}

function bidsNow(lots: readonly TrueLot[], left: number, market: Market, coarser: number): readonly (number | null)[] {
  const points = lots.map(({ lot }) => pricePoints(lot, market.curveOf(lot.group)));
  const levels = market.levels();
  const biddingOn = (lot: TrueLot['lot'], each: PricePoints): Bidding => ({
    points: each,
    rule: 'best',
    bound: -1,
    byLevel: levels.map(({ curveOf }) => chancesOf(lot, curveOf(lot.group), each.prices)),
  });
  const batches = points.flatMap((each, i) =>
    each === undefined ? [] : [{ at: i, lots: [biddingOn((lots[i] as TrueLot).lot, each)] }],
  );
  const means = {
    path: [{ at: instant(0), cents: left }],
    line: 0,
    places: null,
    freed: [],
    keptDollar: 0,
    levels: levels.map(({ chance }) => chance),
  };
  const { bids } = workPlan(batches, means, coarser);
  const planned = new Map(
    batches.map(({ at, lots: [only] }, i) => [at, only?.points.prices[bids[i]?.[0]?.at ?? -1] ?? null]),
  );
  return lots.map((_, i) => planned.get(i) ?? null);
}
