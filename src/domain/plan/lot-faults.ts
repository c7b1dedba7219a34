import { type Cents, cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { PlanFault } from './plan.ts';
import type { PlanLot } from './plan-lot.ts';
import type { Prepared } from './prepare.ts';

/** A max bid so many times the middle of the others is more likely a slip than a car. */
const OUT_OF_LINE = 6;
/** Others that a max bid is held against, at least. */
const ENOUGH_OTHERS = 3;

/** Proxies above their lot's max bid: their cash is held all the same. */
export function overMaxFaults(lots: readonly PlanLot[]): readonly PlanFault[] {
  return lots.flatMap(({ id, name, maxBid, proxy }) => {
    if (maxBid === null || proxy === undefined || proxy <= maxBid) return [];
    const by = formatMoney(cents(proxy - maxBid));
    const sentence = `The proxy on ${name} is ${by} above its max bid. All of it is held; lower it if the sale lets you.`;
    return [{ about: 'lot' as const, lotId: id, sentence }];
  });
}

/** Lots whose max bid stands far above the others': the plan would put the purse on what may be a slip. */
export function outOfLineFaults(lots: readonly PlanLot[]): readonly PlanFault[] {
  const known = lots.flatMap(({ maxBid }) => (maxBid === null ? [] : [maxBid as number])).sort((a, b) => a - b);
  const middle = known[Math.floor((known.length - 1) / 2)] ?? 0;
  if (known.length <= ENOUGH_OTHERS || middle <= 0) return [];
  return lots.flatMap(({ id, name, maxBid }) => {
    if (maxBid === null || maxBid < OUT_OF_LINE * middle) return [];
    const sentence = `The max bid on ${name} is ${formatMoney(maxBid)}, ${Math.round(maxBid / middle)} times the middle of these lots. Check its retail before you bid.`;
    return [{ about: 'lot' as const, lotId: id, sentence }];
  });
}

/** Lots that a floor line may pay for once their title is known. */
export function untitledFaults(lots: readonly PlanLot[], line: number): readonly PlanFault[] {
  const untitled = lots.filter((lot) => lot.untitled === true);
  if (line <= 0 || untitled.length === 0) return [];
  const [first] = untitled;
  const which = untitled.length === 1 ? `${first?.name ?? 'One lot'} has` : `${untitled.length} lots have`;
  const sentence = `${which} no title stated: priced at full retail, and planned from own cash only. Enter the title.`;
  return [{ about: 'lot', ...(untitled.length === 1 && first && { lotId: first.id }), sentence }];
}

/**
 * What to say where the cash pays for no bid at all.
 * @param taking every lot that takes part
 * @param cash what may be promised by the last close; whole cents
 */
export function reachFaults(taking: readonly Prepared[], cash: number, anyBid: boolean): readonly PlanFault[] {
  if (anyBid || cash < 0) return [];
  const least = taking.reduce(
    (all, { bidding }) =>
      (bidding?.points.ways ?? []).reduce((some, way) => Math.min(some, way.cash[0] ?? Number.POSITIVE_INFINITY), all),
    Number.POSITIVE_INFINITY,
  );
  if (!(least > cash) || !Number.isFinite(least)) return [];
  return [
    {
      about: 'purse',
      sentence: `The cash reaches for no lot: the least that a bid takes is ${money(least)}, and there is ${money(cash)}. Check the amount, which is in dollars, or add money.`,
    },
  ];
}

const money = (amount: number): string => formatMoney(cents(Math.round(amount)) as Cents);
