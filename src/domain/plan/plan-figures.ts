import type { Market } from '../market/market.ts';
import { roundedCents } from '../money/cents.ts';
import { atLevels } from './by-level.ts';
import { fanOf } from './fan.ts';
import type { Plan } from './plan.ts';
import { shifted } from './prepare.ts';
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
  const levels = atLevels(batches, means).map(({ weight, batches: own }) => ({ chance: weight, batches: own }));
  const fan = fanOf(
    taking.map((batch) => batch.map(({ lot }) => lot)),
    batches,
    means,
    levels,
    taking.map((batch) => batch.map((each) => bids.get(each)?.at ?? -1)),
  );
  const high = levels.reduce((sum, level) => sum + level.chance * planCeiling(level.batches, means, COARSER), 0);
  const low = fan.at(-1)?.profit ?? roundedCents(0);
  const coarse = planValue(batches, means, COARSER);
  const ifRun = (by: number) => {
    const other = taking.map((batch) => shifted(batch, market, by));
    return roundedCents(coarse > 0 ? Math.max(0, low * (planValue(batchesOf(other), means, COARSER) / coarse)) : 0);
  };
  return {
    profit: low,
    bounds: { low, high: roundedCents(Math.max(low, high)) },
    cars: fan.at(-1)?.cars ?? 0,
    fan,
    worthOfThousand: roundedCents(worked.worths.thousand),
    worthOfLineThousand: means.line > 0 ? roundedCents(worked.worths.lineThousand) : roundedCents(0),
    worthOfPlace: roundedCents(worked.worths.place),
    ifPricesHigher: ifRun(RUN),
    ifPricesLower: ifRun(-RUN),
  };
}
