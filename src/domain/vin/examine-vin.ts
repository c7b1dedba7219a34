import { expectedCheckDigit } from './check-digit.ts';
import type { Vin } from './vin.ts';
import { makerOf, type VinMaker } from './vin-maker.ts';
import { type VinRepair, vinRepairs } from './vin-repairs.ts';
import { type ModelYear, modelYearOf, type VinWeight } from './vin-year.ts';

/** Something about a VIN that deserves a look, and the positions (1 to 17) it is about. */
export interface VinDoubt {
  readonly kind: 'check-digit' | 'year-code' | 'serial' | 'year-differs';
  readonly positions: readonly number[];
  readonly message: string;
}

export interface VinReport {
  readonly vin: Vin;
  readonly year: ModelYear;
  readonly maker: VinMaker;
  /** In the order of their weight; empty when nothing speaks against the VIN. */
  readonly doubts: readonly VinDoubt[];
  /** VINs with a right check digit that are one slip away; to be offered, never applied. */
  readonly repairs: readonly VinRepair[];
}

/**
 * What a VIN says, and what speaks against it.
 * @param known.year the model year the listing states
 * @param known.weight `light` for cars and for trucks rated 10,000 lb or less; leave out when it is not known
 * @param known.thisYear the calendar year now
 */
export function examineVin(
  vin: Vin,
  known: { readonly year?: number | undefined; readonly weight?: VinWeight | undefined; readonly thisYear: number },
): VinReport {
  const year = modelYearOf(vin, known.weight ?? 'unknown', known.thisYear);
  const doubts = [checkDigitDoubt(vin), yearDiffers(vin, year, known.year), yearCodeDoubt(vin, year), serialDoubt(vin)];
  return { vin, year, maker: makerOf(vin), doubts: doubts.filter((doubt) => doubt !== null), repairs: vinRepairs(vin) };
}

function checkDigitDoubt(vin: Vin): VinDoubt | null {
  const expected = expectedCheckDigit(vin);
  const found = vin.charAt(8);
  if (found === expected) return null;
  const message = `Position 9 should be ${expected}, is ${found}: a typing error, or not a US-market car.`;
  return { kind: 'check-digit', positions: [9], message };
}

function yearDiffers(vin: Vin, year: ModelYear, stated: number | undefined): VinDoubt | null {
  if (stated === undefined || year.candidates.length === 0 || year.candidates.includes(stated)) return null;
  const seventh = /\d/.test(vin.charAt(6)) ? 'a digit' : 'a letter';
  const why = `position 10 is ${vin.charAt(9)}${year.candidates.length === 1 ? `, position 7 is ${seventh}` : ''}`;
  const message = `The VIN says ${year.candidates.join(' or ')} (${why}); the listing says ${stated}.`;
  return { kind: 'year-differs', positions: [7, 10], message };
}

function yearCodeDoubt(vin: Vin, year: ModelYear): VinDoubt | null {
  if (year.candidates.length > 0) return null;
  const message = `Position 10 is ${vin.charAt(9)}, which says no model year: a typing error, or not a US-market car.`;
  return { kind: 'year-code', positions: [10], message };
}

/** The last four positions of a US-market VIN are digits (49 CFR 565.15(d), as reported). */
function serialDoubt(vin: Vin): VinDoubt | null {
  const positions = [14, 15, 16, 17].filter((position) => /\D/.test(vin.charAt(position - 1)));
  if (positions.length === 0) return null;
  const what = positions.map((position) => `position ${position} is ${vin.charAt(position - 1)}`).join(', ');
  const message = `The last four are digits on a US-market car, but ${what}: a typing error, or another market.`;
  return { kind: 'serial', positions, message };
}
