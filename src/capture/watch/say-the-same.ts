import type { DraftField, DraftLot, DraftLots } from '../draft/draft-lot.ts';

/** A countdown is read to the second it was looked at. */
const COUNTDOWN_SLACK_MS = 90_000;

/** Whether two readings of a page tell the same of its lots: which cars they are, their prices, and when they close. */
export function sayTheSame(one: DraftLots, other: DraftLots): boolean {
  return (
    one.kind === other.kind &&
    one.lots.length === other.lots.length &&
    one.lots.every((lot, at) => isSameLot(lot, other.lots[at]))
  );
}

function isSameLot(lot: DraftLot, other: DraftLot | undefined): boolean {
  if (other === undefined) return false;
  const [a, b] = [lot.fields, other.fields];
  return (
    isSame(a.vin, b.vin, (x, y) => x === y) &&
    isSame(a.lotNumber, b.lotNumber, (x, y) => x === y) &&
    isSame(a.priceNow, b.priceNow, (x, y) => x === y) &&
    isSame(a.close, b.close, (x, y) => {
      const slack = x.how === 'countdown' || y.how === 'countdown' ? COUNTDOWN_SLACK_MS : 0;
      return Math.abs(x.instant - y.instant) <= slack;
    })
  );
}

function isSame<Value>(
  a: DraftField<Value> | undefined,
  b: DraftField<Value> | undefined,
  same: (a: Value, b: Value) => boolean,
): boolean {
  if (a === undefined || b === undefined) return a === b;
  const [first, second] = [a.readings[0], b.readings[0]];
  return a.settled === b.settled && first !== undefined && second !== undefined && same(first.value, second.value);
}
