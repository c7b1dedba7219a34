import type { Market } from '../market/market.ts';
import { type Cents, cents, ZERO } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { overChance, type Room } from './over-chance.ts';
import type { PlanFault, Takes } from './plan.ts';
import type { PayWay, PlanLot } from './plan-lot.ts';
import { belowOf } from './price-points.ts';
import type { Purse } from './purse.ts';

/** Money and places that bids would take if every one of them won. */
export interface Exposure {
  readonly cash: number;
  readonly line: number;
  readonly cars: number;
}

/** What a bid takes at its own price: by the way with the most profit of those that cash and line reach. */
export function takesAt(
  lot: PlanLot,
  price: Cents,
  left: { readonly cash: number; readonly line: number },
): PayWay | undefined {
  const ways = lot.waysAt(price).filter(({ cash, line }) => cash <= left.cash && line <= left.line);
  return ways.reduce<PayWay | undefined>(
    (best, way) => (best === undefined || way.profit > best.profit ? way : best),
    undefined,
  );
}

/** What the proxies that are in would take together, the line going to the first that can use it. */
export function exposureOf(lots: readonly PlanLot[], line: number): Exposure {
  let [cash, drawn, cars] = [0, 0, 0];
  for (const lot of lots) {
    if (lot.proxy === undefined || lot.proxy <= 0) continue;
    const way =
      takesAt(lot, lot.proxy, { cash: Number.POSITIVE_INFINITY, line: line - drawn }) ?? lot.waysAt(lot.proxy)[0];
    if (way === undefined) continue;
    cash += way.cash;
    drawn += way.line;
    cars += 1;
  }
  return { cash, line: drawn, cars };
}

/** Whether the purse holds a bid beside every proxy that is in on other lots. */
export function fitsBeside(takes: Takes | null, others: Exposure, cash: number, { line, places }: Purse): boolean {
  if (takes === null) return true;
  return (
    others.cash + takes.cash <= cash &&
    others.line + takes.line <= (line?.free ?? 0) &&
    (places === undefined || others.cars + 1 <= places)
  );
}

/** The chance that proxies together win more than there is, each taken to cost all of itself. */
export function proxyOver(lots: readonly PlanLot[], room: Room, market: Market): number {
  const levels = market.levels();
  let drawn = 0;
  const stakes = lots.flatMap((lot) => {
    const proxy = lot.proxy ?? ZERO;
    const way = takesAt(lot, proxy, { cash: Number.POSITIVE_INFINITY, line: room.line - drawn });
    if (way === undefined) return [];
    drawn += way.line;
    const chances = levels.map(({ curveOf }) => [belowOf(lot, curveOf(lot.group))(proxy)]);
    return [{ cash: [way.cash], line: [way.line], chances }];
  });
  return overChance(
    stakes,
    levels.map(({ chance }) => chance),
    room,
  );
}

/**
 * What is wrong with the purse itself, and with the proxies that stand against it.
 * @param over the chance that they win more than there is; asked for only where they could and the user allows a chance
 */
export function purseFaults(
  cash: number,
  { line, places, overChance: allowed }: Purse,
  standing: Exposure,
  over: () => number,
): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  if (cash < 0) {
    const short = formatMoney(cents(-cash));
    faults.push({
      about: 'purse',
      sentence: `The purse is overdrawn: ${short} more is promised or due than there is cash. No bid is planned until money comes in or a promise falls away.`,
    });
  }
  if (line !== undefined && line.free < 0) {
    faults.push({
      about: 'purse',
      sentence: `The floor line is overdrawn by ${formatMoney(cents(-line.free))}: it pays for no car until it is paid down.`,
    });
  }
  if (places !== undefined && places < 0) {
    faults.push({
      about: 'purse',
      sentence: `The lot has ${-places} more ${places === -1 ? 'car' : 'cars'} than places. No bid is planned until a place is free.`,
    });
  }
  const tooMuch = standing.cash > Math.max(0, cash);
  const tooMany = places !== undefined && standing.cars > Math.max(0, places);
  if (standing.cars === 0 || !(tooMuch || tooMany)) return faults;
  if (allowed > 0 && over() <= allowed) return faults;
  if (tooMuch) {
    faults.push({
      about: 'proxies',
      sentence: `The ${proxies(standing.cars)} in would take ${formatMoney(cents(standing.cash))} of cash if all won, and there is ${formatMoney(cents(Math.max(0, cash)))}. Lower or withdraw some.`,
    });
  }
  if (tooMany) {
    faults.push({
      about: 'proxies',
      sentence: `The ${proxies(standing.cars)} in could win more cars than there are places (${Math.max(0, places)}). Withdraw some.`,
    });
  }
  return faults;
}

const proxies = (count: number): string => (count === 1 ? 'proxy that is' : `${count} proxies that are`);
