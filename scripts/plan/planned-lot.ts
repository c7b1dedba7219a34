import { attempt } from '../../src/domain/attempt.ts';
import { carName, lotName } from '../../src/domain/lot/car-name.ts';
import { cents } from '../../src/domain/money/cents.ts';
import type { PlanRow } from '../../src/domain/plan/plan.ts';
import type { PlanChoice, PlanLot } from '../../src/domain/plan/plan-lot.ts';
import { pricedLot } from '../../src/domain/plan/priced-lot.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { PricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import type { LotAnswer } from '../worksheet/lot-answer.ts';
import type { LotRow } from '../worksheet/read-rows.ts';
import type { PurseFile } from './read-purse.ts';

/** Everything the command says about one lot; also the object it writes as JSON. The keys are always all there. */
export type PlannedLot = ReturnType<typeof plannedLot>;

interface PlanLotFrom {
  readonly context: PricingContext;
  readonly groupOf: PurseFile['groupOf'];
  readonly choice: PlanChoice | undefined;
}

/** A row of the table as the plan needs it; one that can't be priced has no max bid. */
export function planLotOf({ row, facts, barring }: LotRow, { context, groupOf, choice }: PlanLotFrom): PlanLot {
  const priced = attempt(() => pricedLot(facts, context));
  const found = priced.ok && priced.value.ok && barring.length === 0 ? priced.value.value : NOT_PRICED;
  const known = facts.priceNow !== undefined && facts.priceNow > 0 && facts.sealed === undefined;
  return {
    id: String(row),
    name: lotName(facts),
    close: (facts.close?.instant as Instant | undefined) ?? null,
    ...found,
    // A venue that is called by a name in the setup is the same as its id in the closings.
    group: groupOf({ ...facts, venueId: context.venueOf(facts)?.id ?? '' }),
    ...(known && {
      priceNow: facts.priceNow,
      leading: facts.proxy !== undefined && facts.proxy > (facts.priceNow ?? 0),
    }),
    ...(facts.proxy !== undefined && facts.proxy >= (facts.priceNow ?? 0) && { proxy: facts.proxy }),
    ...(facts.sealed !== undefined && { sealed: true }),
    ...(choice !== undefined && { choice }),
  };
}

const NOT_PRICED = {
  maxBid: null,
  increments: [{ fromCents: cents(0), stepCents: cents(10_000) }],
  zeroProfit: cents(1),
  waysAt: () => [{ pool: 'cash' as const, cash: 0, line: 0, profit: 0 }],
};

/** A row of the plan beside what the worksheet says of the lot. */
export function plannedLot(row: PlanRow, { facts }: LotRow, answer: LotAnswer) {
  const { takes, chance } = row;
  return {
    row: answer.row,
    vin: facts.vin ?? null,
    car: carName(facts) || null,
    closes: row.close === null ? null : new Date(row.close).toISOString(),
    maxBid: dollars(row.maxBid),
    plannedBid: dollars(row.plannedBid),
    reason: row.reason.is,
    sentence: answer.problems.length > 0 ? answer.problems.map(({ message }) => message).join(' ') : row.sentence,
    chance: chance === null ? null : Math.round(chance.chance * 10_000) / 10_000,
    chanceWords: chance?.words ?? null,
    closings: chance?.closings ?? null,
    cash: dollars(takes?.cash ?? null),
    line: dollars(takes?.line ?? null),
    fitsBesideProxies: row.fitsBesideProxies,
    batch: row.batch,
    problems: answer.problems,
  };
}

const dollars = (amount: number | null): number | null => (amount === null ? null : amount / 100);
