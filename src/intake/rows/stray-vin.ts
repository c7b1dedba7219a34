import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { readVin } from '../../domain/vin/read-vin.ts';

/** Seventeen of a VIN's characters in a row; more than that are something else. */
const SEVENTEEN = /(?<![A-Z0-9])[A-HJ-NPR-Z0-9]{17}(?![A-Z0-9])/gi;

/**
 * The VIN that stands in a cell under another heading, recognized by its check digit, which seventeen other characters have
 * one time in eleven at most.
 * @returns the position of its cell and the VIN; null when there is none, or more than one
 */
export function strayVin(cells: readonly string[]): { readonly column: number; readonly vin: string } | null {
  let found: { column: number; vin: string } | null = null;
  for (const [column, cell] of cells.entries()) {
    for (const [text] of cell.slice(0, 2000).matchAll(SEVENTEEN)) {
      const vin = readVin(text);
      if (!vin.ok || !checkDigitMatches(vin.value) || !/[A-Z]/.test(vin.value)) continue;
      if (found !== null && found.vin !== vin.value) return null;
      found ??= { column, vin: vin.value };
    }
  }
  return found;
}
