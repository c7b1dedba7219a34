/**
 * A deliberately naive second opinion on the max bid, in another way of computing: fractions over BigInt instead of
 * guarded doubles, a loop over every price instead of a search, and not one line shared with the code it checks (types
 * aside).
 */

import type { Deal } from '../../src/domain/deal/deal.ts';
import type { RoundingMode } from '../../src/domain/money/rounding.ts';

export interface OracleSums {
  readonly fees: bigint;
  readonly charges: bigint;
  readonly allIn: bigint;
  readonly financed: bigint;
  readonly cash: bigint;
  readonly interest: bigint;
  readonly cashCost: bigint;
  readonly undone: bigint;
  readonly profit: bigint;
  readonly required: bigint;
  readonly slack: bigint;
}

const MILLION = 1_000_000n;
const MILLION_MILLION = 1_000_000_000_000n;

/** What each way of rounding makes of exactly half, and of less and more than half, above `floor`. */
const SETTLED: Record<RoundingMode, (floor: bigint) => { less: bigint; half: bigint; more: bigint }> = {
  'half-up': (floor) => ({ less: floor, half: floor + 1n, more: floor + 1n }),
  'half-even': (floor) => ({ less: floor, half: floor + (floor % 2n), more: floor + 1n }),
  up: (floor) => ({ less: floor + 1n, half: floor + 1n, more: floor + 1n }),
  down: (floor) => ({ less: floor, half: floor, more: floor }),
};

/** n/d as a whole number, d > 0: the floor and what is left of it settle the rest. */
export function rounded(n: bigint, d: bigint, mode: RoundingMode): bigint {
  if (n < 0n) return -rounded(-n, d, mode);
  const floor = n / d;
  const twice = 2n * (n - floor * d);
  if (twice === 0n) return floor;
  return SETTLED[mode](floor)[twice < d ? 'less' : twice === d ? 'half' : 'more'];
}

export function oracleFees(deal: Deal, price: bigint): bigint {
  let all = 0n;
  for (const table of deal.fees) {
    let fee = 0n;
    // Every band that starts at or below the price is looked at; the last one wins.
    for (const band of table.bands) {
      if (BigInt(band.fromCents) > price) continue;
      fee = BigInt(band.flatCents) + rounded(price * BigInt(band.ratePpm), MILLION, table.rounding);
      if (band.maximumCents !== undefined && fee > BigInt(band.maximumCents)) fee = BigInt(band.maximumCents);
      if (band.minimumCents !== undefined && fee < BigInt(band.minimumCents)) fee = BigInt(band.minimumCents);
    }
    all += fee;
  }
  return all;
}

const total = (list: readonly { cents: number }[]) => list.reduce((sum, line) => sum + BigInt(line.cents), 0n);

function largest(values: readonly bigint[]): bigint {
  let most = 0n;
  for (const value of values) if (value > most) most = value;
  return most;
}

export function oracleSums(deal: Deal, price: bigint): OracleSums {
  const half = (n: bigint, d: bigint) => rounded(n, d, 'half-up');
  const fees = oracleFees(deal, price);
  const charges = total(deal.charges);
  const transport = total(deal.costs.filter((line) => line.kind === 'transport'));
  const recon = total(deal.costs.filter((line) => line.kind === 'recon'));
  const other = total(deal.costs.filter((line) => line.kind !== 'transport' && line.kind !== 'recon'));
  const allIn = price + fees + charges + transport;
  let financed = 0n;
  if (deal.funding.kind === 'floor') {
    const base = deal.funding.advanceOnFees ? price + fees + charges : price;
    financed = (base * BigInt(deal.funding.advance)) / MILLION;
    if (deal.funding.advanceCap !== undefined && financed > BigInt(deal.funding.advanceCap)) {
      financed = BigInt(deal.funding.advanceCap);
    }
  }
  const cash = allIn - financed + recon;
  const interest = half(financed * BigInt(deal.funding.floorFactor), MILLION_MILLION);
  const cashCost = half(cash * BigInt(deal.funding.cashFactor), MILLION_MILLION);
  const titled = half(BigInt(deal.retail) * BigInt(deal.titleKeeps), MILLION);
  const hold = interest + cashCost + BigInt(deal.funding.flatHold);
  const kept = titled - other - recon - allIn - hold;
  const lost = BigInt(deal.unwind.fixed) + half(price * BigInt(deal.unwind.rate), MILLION);
  const undone = half(BigInt(deal.unwind.chance) * (kept + lost), MILLION);
  const profit = kept - undone;
  const required = largest([
    BigInt(deal.rule.dollars),
    half(titled * BigInt(deal.rule.shareOfRetail), MILLION),
    half(cash * BigInt(deal.rule.perCash), MILLION_MILLION),
  ]);
  return {
    fees,
    charges,
    allIn,
    financed,
    cash,
    interest,
    cashCost,
    undone,
    profit,
    required,
    slack: profit - required,
  };
}

/** Every price of the sale's grid from 0 to retail after the title, one after the other. */
export function oracleGrid(deal: Deal): number[] {
  const top = Number(rounded(BigInt(deal.retail) * BigInt(deal.titleKeeps), MILLION, 'half-up'));
  const prices: number[] = [];
  deal.increments.forEach((band, i) => {
    const end = deal.increments[i + 1]?.fromCents ?? Number.POSITIVE_INFINITY;
    for (let price: number = band.fromCents; price < end && price <= top; price += band.stepCents) prices.push(price);
  });
  return prices;
}

/** The accepted prices as runs of neighbors on the grid. */
export function oracleRuns(
  grid: readonly number[],
  accepts: (price: number) => boolean,
): { low: number; high: number }[] {
  const runs: { low: number; high: number }[] = [];
  let open = false;
  for (const price of grid) {
    const yes = accepts(price);
    const last = runs.at(-1);
    if (yes && open && last !== undefined) last.high = price;
    else if (yes) runs.push({ low: price, high: price });
    open = yes;
  }
  return runs;
}

export const oracleAccepted = (deal: Deal) =>
  oracleRuns(oracleGrid(deal), (price) => oracleSums(deal, BigInt(price)).slack >= 0n);
