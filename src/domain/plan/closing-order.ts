import type { Instant } from '../time/instant.ts';
import type { PlanFault } from './plan.ts';
import type { PlanLot } from './plan-lot.ts';
import type { Purse } from './purse.ts';

/** A lot that the plan can place in time. */
export type TimedLot = PlanLot & { readonly close: Instant };

/** Which lots the purse is for, and in what order they close. */
export interface ClosingOrder {
  /** Lots that close too near to one another to be reacted to, each list and the lots in it by their closes. */
  readonly batches: readonly (readonly TimedLot[])[];
  /** The others, in the order given. */
  readonly noClose: readonly PlanLot[];
  readonly closed: readonly PlanLot[];
  readonly afterPurse: readonly PlanLot[];
  readonly faults: readonly PlanFault[];
}

/**
 * Puts lots in the order of their closes. One belongs to the same batch as the one before it when it closes within the
 * reaction time of it: then nobody could change its bid for what happened there.
 */
export function closingOrder(lots: readonly PlanLot[], { until, reaction }: Purse, now: Instant): ClosingOrder {
  const noClose: PlanLot[] = [];
  const closed: PlanLot[] = [];
  const afterPurse: PlanLot[] = [];
  const timed: TimedLot[] = [];
  for (const lot of lots) {
    if (!isTimed(lot)) noClose.push(lot);
    else if (lot.close <= now) closed.push(lot);
    else if (until !== undefined && lot.close > until) afterPurse.push(lot);
    else timed.push(lot);
  }
  timed.sort((a, b) => a.close - b.close);
  const batches: TimedLot[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const lot of timed) {
    // Closes at one moment are never apart, whatever the reaction time.
    if (lot.close - last <= reaction) batches.at(-1)?.push(lot);
    else batches.push([lot]);
    last = lot.close;
  }
  return { batches, noClose, closed, afterPurse, faults: [...withoutClose(noClose), ...moved(timed)] };
}

const isTimed = (lot: PlanLot): lot is TimedLot => lot.close !== null;

function withoutClose(lots: readonly PlanLot[]): readonly PlanFault[] {
  return lots.map(({ id, name }) => ({
    about: 'close',
    lotId: id,
    sentence: `${name} has no close, so it has no place in the plan. Enter when it closes.`,
  }));
}

/** A lot that closed before another when the plan was last made, and now closes behind it. */
function moved(timed: readonly TimedLot[]): readonly PlanFault[] {
  return timed.flatMap((lot, i) => {
    const before = lot.closeBefore;
    if (before === undefined || before >= lot.close) return [];
    const passed = timed.slice(0, i).filter((other) => (other.closeBefore ?? other.close) > before);
    const [first] = passed;
    if (first === undefined) return [];
    const others = passed.length === 1 ? first.name : `${passed.length} other lots`;
    const sentence = `${lot.name} now closes after ${others}. The plan follows the new order: check the proxies that are in.`;
    return [{ about: 'close' as const, lotId: lot.id, sentence }];
  });
}
