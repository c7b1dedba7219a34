import type { Vin } from './vin.ts';

/** What each character counts in the sum; I, O and Q do not occur in a VIN. 49 CFR 565.15(c). */
const VALUES: Readonly<Record<string, number>> = Object.fromEntries(
  ['0', '1AJ', '2BKS', '3CLT', '4DMU', '5ENV', '6FW', '7GPX', '8HY', '9RZ'].flatMap((characters, value) =>
    [...characters].map((character) => [character, value]),
  ),
);

/** Weights of positions 1 to 17; the check digit itself, in position 9, does not count. 49 CFR 565.15(c). */
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

/** The 33 characters a VIN is written in. */
export const VIN_CHARACTERS = Object.keys(VALUES).sort().join('');

/**
 * The character that position 9 must hold on a US-market vehicle: the weighted sum of the other sixteen, modulo 11, with
 * ten written X (49 CFR 565.15(c)). Whole numbers throughout: the regulation's table of decimal fractions misprints 7/11.
 */
export function expectedCheckDigit(vin: Vin): string {
  const sum = WEIGHTS.reduce<number>((total, weight, i) => total + weight * (VALUES[vin.charAt(i)] ?? 0), 0);
  return sum % 11 === 10 ? 'X' : String(sum % 11);
}

/** Whether position 9 is what the rest asks for. About one typing error in twelve passes; cars of other markets may fail. */
export const checkDigitMatches = (vin: Vin): boolean => vin.charAt(8) === expectedCheckDigit(vin);
