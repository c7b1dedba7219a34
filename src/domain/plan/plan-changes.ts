import type { Cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { Plan } from './plan.ts';

/** A lot whose planned bid is another than before. */
export interface PlanChange {
  readonly lotId: string;
  /** Null where no bid was planned. */
  readonly before: Cents | null;
  readonly after: Cents | null;
  /** The change in one sentence, to stand after the lot's name. */
  readonly sentence: string;
}

/** What a plan made again says otherwise, in closing order. Lots that one of the two does not know are left out. */
export function planChanges(before: Plan, after: Plan): readonly PlanChange[] {
  const was = new Map(before.rows.map((row) => [row.lotId, row.plannedBid]));
  return after.rows.flatMap(({ lotId, plannedBid }) => {
    const old = was.get(lotId);
    if (old === undefined || old === plannedBid) return [];
    return [{ lotId, before: old, after: plannedBid, sentence: sentenceOf(old, plannedBid) }];
  });
}

function sentenceOf(before: Cents | null, after: Cents | null): string {
  if (after === null) return `No bid is planned now; it was ${formatMoney(before as Cents)}.`;
  if (before === null) return `The planned bid is ${formatMoney(after)} now; there was none.`;
  const by = (after - before) as Cents;
  const way = by > 0 ? 'up' : 'down';
  return `The planned bid is ${formatMoney(after)} now, ${way} ${formatMoney(Math.abs(by) as Cents)} from ${formatMoney(before)}.`;
}
