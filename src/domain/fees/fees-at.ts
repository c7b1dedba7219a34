import type { Cents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import { mulDivRound, type RoundingMode } from '../money/rounding.ts';
import type { FeeBand, FeeTable } from './fee-schedule.ts';

/** What one table charges at a price. */
export interface FeeLine {
  readonly label: string;
  readonly cents: Cents;
}

/** What each fee table charges at a hammer price, in the order of the tables. Charges that never vary are not in it. */
export function feesAt(price: Cents, tables: readonly FeeTable[]): readonly FeeLine[] {
  return tables.map((table) => ({ label: table.label, cents: feeOf(table, price) as Cents }));
}

/** All tables together, in whole cents: the same sum as {@link feesAt} without its lines, for searching. */
export function totalFees(price: number, tables: readonly FeeTable[]): number {
  let total = 0;
  for (const table of tables) total += feeOf(table, price);
  return total;
}

/** What one table charges at `price`, in whole cents. */
export function feeOf(table: FeeTable, price: number): number {
  return bandFee(bandAt(table.bands, price), price, table.rounding);
}

/** `clamp(flat + round(price × rate), minimum, maximum)`, rounded once. Within a band it never falls as the price rises. */
export function bandFee(band: FeeBand, price: number, rounding: RoundingMode): number {
  const fee = band.ratePpm === 0 ? band.flatCents : band.flatCents + mulDivRound(price, band.ratePpm, PPM, rounding);
  if (band.minimumCents !== undefined && fee < band.minimumCents) return band.minimumCents;
  if (band.maximumCents !== undefined && fee > band.maximumCents) return band.maximumCents;
  return fee;
}

/** The last band that starts at or below `price`: a price exactly on an edge pays the upper band. */
function bandAt(bands: readonly FeeBand[], price: number): FeeBand {
  let low = 0;
  let high = bands.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((bands[middle] as FeeBand).fromCents <= price) low = middle;
    else high = middle;
  }
  const band = bands[low];
  if (band === undefined) throw new RangeError('a fee table needs at least one band');
  return band;
}
