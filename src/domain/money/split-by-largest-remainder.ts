import { type Cents, cents } from './cents.ts';

/**
 * Shares an amount out by weights, to the cent: everyone gets his exact share rounded down, and the cents that are left
 * go one each to the largest remainders; a tie goes to the one named first. This is Hamilton's method of apportionment.
 * The shares add up to the amount, each is within a cent of its exact share, and a negative amount gives the negated
 * shares.
 * @param weights whole numbers, 0 or more; someone of weight 0 gets nothing
 * @throws RangeError when a weight is negative or no whole number, or when all are 0 and there is something to share
 */
export function splitByLargestRemainder(amount: Cents, weights: readonly number[]): readonly Cents[] {
  if (weights.some((weight) => !Number.isSafeInteger(weight) || weight < 0))
    throw new RangeError(`not weights to share by: ${weights.join(', ')}`);
  const size = BigInt(Math.abs(amount));
  const total = weights.reduce((sum, weight) => sum + BigInt(weight), 0n);
  if (total === 0n) {
    if (amount !== 0) throw new RangeError('nobody has a weight, so there is nobody to give it to');
    return weights.map(() => cents(0));
  }
  const exact = weights.map((weight, place) => {
    const product = size * BigInt(weight);
    return { place, whole: Number(product / total), remainder: product % total };
  });
  const left = Number(size) - exact.reduce((sum, { whole }) => sum + whole, 0);
  const byRemainder = [...exact].sort((a, b) =>
    a.remainder === b.remainder ? a.place - b.place : a.remainder > b.remainder ? -1 : 1,
  );
  const lucky = new Set(byRemainder.slice(0, left).map(({ place }) => place));
  const sign = amount < 0 ? -1 : 1;
  return exact.map(({ place, whole }) => cents(sign * (whole + (lucky.has(place) ? 1 : 0))));
}
