import type { Market } from '../market/market.ts';
import { roundedCents } from '../money/cents.ts';
import { fanOf } from './fan.ts';
import type { Plan } from './plan.ts';
import { type Prepared, shifted } from './prepare.ts';
import { batchesOf, type Run } from './run-plan.ts';
import { type PlanMeans, planCeiling, planValue } from './worked-plan.ts';

type Figures = Pick<
  Plan,
  | 'profit'
  | 'bounds'
  | 'cars'
  | 'fan'
  | 'worthOfThousand'
  | 'worthOfLineThousand'
  | 'worthOfPlace'
  | 'ifPricesHigher'
  | 'ifPricesLower'
>;

/** How much coarser figures are worked out that nothing is bid by. */
const COARSER = 8;
/** "If prices run 5% higher", in logarithms. */
const RUN = Math.log(1.05);

/** The figures of a whole plan. */
export function figuresOf({ taking, batches, worked, bids }: Run, means: PlanMeans, market: Market): Figures {
  const value = Math.max(0, worked.value);
  const coarse = planValue(batches, means, COARSER);
  // Two coarse figures err alike, so what counts is how far they are apart.
  const ifRun = (by: number) => {
    const other = taking.map((batch) => shifted(batch, market, by));
    return roundedCents(Math.max(0, value + planValue(batchesOf(other), means, COARSER) - coarse));
  };
  const fan = fanOf(
    taking.map((batch) => batch.map(({ lot }) => lot)),
    batches,
    means,
    market.levels().map(({ chance, curveOf }) => ({
      chance,
      batches: batchesOf(taking.map((batch): readonly Prepared[] => shifted(batch, { curveOf }, 0))),
    })),
    taking.map((batch) => batch.map((each) => bids.get(each)?.at ?? -1)),
  );
  return {
    profit: roundedCents(value),
    bounds: { low: roundedCents(value), high: roundedCents(Math.max(value, planCeiling(batches, means, 2))) },
    cars: fan.at(-1)?.cars ?? 0,
    fan,
    worthOfThousand: roundedCents(worked.worths.thousand),
    worthOfLineThousand: means.line > 0 ? roundedCents(worked.worths.lineThousand) : roundedCents(0),
    worthOfPlace: roundedCents(worked.worths.place),
    ifPricesHigher: ifRun(RUN),
    ifPricesLower: ifRun(-RUN),
  };
}
