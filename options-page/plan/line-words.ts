import { PPM } from '../../src/domain/money/rate.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';

/** What the lender takes, as Setup has it. */
export function lineWords({ carrying, titles }: Pick<Setup, 'carrying' | 'titles'>): string {
  const plan = carrying.floorPlan;
  if (plan === undefined) return 'Setup has no floor plan, so every car is paid from cash';
  const refused = titles.filter(({ floorable }) => !floorable).map(({ name }) => name);
  const share = `${(plan.advancePpm / PPM) * 100}% of the ${plan.advanceOnFees ? 'price and fees' : 'price'}`;
  return `It pays ${share}${refused.length === 0 ? '' : `; cash only: ${refused.join(', ')}`}`;
}
