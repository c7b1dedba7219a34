import type { Carrying } from './carrying-rules.ts';
import type { StockCar } from './days-to-sell.ts';
import { type HoldCase, holdSpread } from './hold-spread.ts';

/** The spread of holding cost for a way of paying and a stretch of the usual days. */
export type HoldSpreads = (funding: 'floor' | 'cash', stretch: number) => readonly HoldCase[];

/** The same spreads as `holdSpread`, each worked out once: nearly all lots of a dealer share one of two. */
export function holdSpreads(carrying: Carrying, history: readonly StockCar[]): HoldSpreads {
  const known = new Map<string, readonly HoldCase[]>();
  return (funding, stretch) => {
    const key = `${funding} ${stretch}`;
    const cases = known.get(key) ?? holdSpread(carrying, { history, funding, stretch });
    known.set(key, cases);
    return cases;
  };
}
