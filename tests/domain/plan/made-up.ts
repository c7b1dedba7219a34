import { cents } from '../../../src/domain/money/cents.ts';
import type { PayWay, PlanLot } from '../../../src/domain/plan/plan-lot.ts';
import type { Purse } from '../../../src/domain/plan/purse.ts';
import { instant } from '../../../src/domain/time/instant.ts';

export const dollars = (amount: number) => cents(Math.round(amount * 100));
export const minutes = (count: number) => instant(count * 60_000);
export const NOW = instant(0);

/** A purse of so many dollars, with nothing else to it. */
export function purseOf(cash: number, more: Partial<Purse> = {}): Purse {
  return { cash: dollars(cash), flows: [], reaction: 180_000, overChance: 0, ...more };
}

/** A lot that is worth `worth` dollars, costs the hammer price and `costs`, and is paid from own cash. */
export function lotOf(id: string, closesAt: number | null, more: LotGiven = {}): PlanLot {
  const { worth = 12_000, costs = 800, leastProfit = 1_500, step = 100, ...rest } = more;
  const top = Math.floor((worth - costs - leastProfit) / step) * step;
  return {
    id,
    name: `Lot ${id}`,
    close: closesAt === null ? null : minutes(closesAt),
    maxBid: top > 0 ? dollars(top) : null,
    increments: [{ fromCents: dollars(0), stepCents: dollars(step) }],
    zeroProfit: dollars(worth - costs),
    waysAt: (price): readonly PayWay[] => [
      { pool: 'cash', cash: price + costs * 100, line: 0, profit: (worth - costs) * 100 - price },
    ],
    group: { carClass: 'cargo van', title: '', seller: '', venue: 'v1' },
    ...rest,
  };
}

interface LotGiven extends Partial<PlanLot> {
  readonly worth?: number;
  readonly costs?: number;
  readonly leastProfit?: number;
  readonly step?: number;
}
