import type { Carrying } from './carrying-rules.ts';
import type { StockCar } from './days-to-sell.ts';
import { FORTNIGHT, type HoldCase, holdSpread } from './hold-spread.ts';

/** The spread of holding cost in few cases, which will do wherever a chance rises smoothly, and day by day. */
export interface HoldSpread {
  readonly few: readonly HoldCase[];
  readonly byDay: readonly HoldCase[];
}

/** The spread of holding cost for a way of paying and a stretch of the usual days. */
export type HoldSpreads = (funding: 'floor' | 'cash', stretch: number) => HoldSpread;

/** The same spreads as `holdSpread`, each worked out once: nearly all lots of a dealer share one of two. */
export function holdSpreads(carrying: Carrying, history: readonly StockCar[]): HoldSpreads {
  const known = new Map<string, HoldSpread>();
  return (funding, stretch) => {
    const key = `${funding} ${stretch}`;
    const by = (days: number) => holdSpread(carrying, { history, funding, stretch }, days);
    const cases = known.get(key) ?? { few: by(FORTNIGHT), byDay: by(1) };
    known.set(key, cases);
    return cases;
  };
}
