import { type Cents, cents } from './cents.ts';
import { FACTOR_UNIT, type Factor, PPM, type Ppm } from './rate.ts';

/** How a fraction of a cent is settled. `half-up` means away from zero, as invoices do. */
export const ROUNDING_MODES = ['half-up', 'half-even', 'up', 'down'] as const;
export type RoundingMode = (typeof ROUNDING_MODES)[number];

/**
 * `value × multiplier ÷ divisor`, rounded once to a whole number. Exact: products beyond 2^53 go through BigInt.
 * `up` is away from zero, `down` towards zero, so that a negated amount gives the negated result.
 * @param value whole number, either sign
 * @param multiplier whole number, 0 or more
 * @param divisor whole number, 1 or more
 */
export function mulDivRound(value: number, multiplier: number, divisor: number, mode: RoundingMode): number {
  const size = Math.abs(value);
  const product = size * multiplier;
  const rounded = Number.isSafeInteger(product)
    ? mulDivSafe(product, divisor, mode)
    : mulDivBig(size, multiplier, divisor, mode);
  return value < 0 ? -rounded : rounded;
}

function mulDivSafe(product: number, divisor: number, mode: RoundingMode): number {
  const remainder = product % divisor;
  // Subtracting first keeps the division exact; a floored quotient can be one too high near 2^53.
  return settle((product - remainder) / divisor, remainder, divisor, mode);
}

function settle(quotient: number, remainder: number, divisor: number, mode: RoundingMode): number {
  if (remainder === 0 || mode === 'down') return quotient;
  if (mode === 'up') return quotient + 1;
  const twice = remainder * 2;
  if (twice !== divisor) return twice > divisor ? quotient + 1 : quotient;
  return mode === 'half-up' || quotient % 2 === 1 ? quotient + 1 : quotient;
}

function mulDivBig(size: number, multiplier: number, divisor: number, mode: RoundingMode): number {
  const product = BigInt(size) * BigInt(multiplier);
  const whole = BigInt(divisor);
  return settle(Number(product / whole), Number(product % whole), divisor, mode);
}

/** A rate of an amount, rounded once to the cent. */
export function rateOf(amount: Cents, rate: Ppm, mode: RoundingMode = 'half-up'): Cents {
  return cents(mulDivRound(amount, rate, PPM, mode));
}

/** A factor of an amount, rounded half up once to the cent. */
export function factorOf(amount: Cents, multiplier: Factor): Cents {
  return cents(mulDivRound(amount, multiplier, FACTOR_UNIT, 'half-up'));
}
