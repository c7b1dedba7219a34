import { type Cents, cents } from './cents.ts';
import { FACTOR_UNIT, type Factor, PPM, type Ppm } from './rate.ts';

interface RoundingRule {
  /** In the list of the setup. */
  readonly words: string;
  /**
   * Whether what lies between two cents goes away from zero.
   * @param half how the fraction stands to half a cent: below it (under 0), at it (0) or above it
   * @param cents the whole cents below it
   */
  readonly goesUp: (half: number, cents: number) => boolean;
}

/** Every way in which a fraction of a cent is settled; each is all here. `half-up` is what most invoices do. */
export const ROUNDING = {
  'half-up': { words: 'Half a cent up, as on most invoices', goesUp: (half) => half >= 0 },
  'half-even': {
    words: 'Half a cent to the even cent',
    goesUp: (half, cents) => half > 0 || (half === 0 && cents % 2 === 1),
  },
  up: { words: 'Always up to the next cent', goesUp: () => true },
  down: { words: 'Fractions of a cent dropped', goesUp: () => false },
} as const satisfies Readonly<Record<string, RoundingRule>>;

export type RoundingMode = keyof typeof ROUNDING;
// The keys of a constant are those that its type names.
export const ROUNDING_MODES = Object.keys(ROUNDING) as readonly RoundingMode[];

/**
 * `value × multiplier ÷ divisor`, rounded once to a whole number. Exact: products beyond 2^53 go through BigInt, but for
 * those that lie clear of every half and whole, whose answer floating point can't miss.
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
    : (mulDivClear(product / divisor, mode) ?? mulDivBig(size, multiplier, divisor, mode));
  return value < 0 ? -rounded : rounded;
}

function mulDivSafe(product: number, divisor: number, mode: RoundingMode): number {
  const remainder = product % divisor;
  // Subtracting first keeps the division exact; a floored quotient can be one too high near 2^53.
  return settle((product - remainder) / divisor, remainder, divisor, mode);
}

/** Two roundings of 2^-53 put a quotient below 2^40 less than 2^-11 off: anything farther than that from a tie is settled. */
function mulDivClear(quotient: number, mode: RoundingMode): number | undefined {
  if (quotient >= 2 ** 40) return undefined;
  const whole = Math.floor(quotient);
  const fraction = quotient - whole;
  const clear = Math.min(fraction, Math.abs(fraction - 0.5), 1 - fraction) > 2 ** -11;
  return clear ? settle(whole, fraction, 1, mode) : undefined;
}

function settle(quotient: number, remainder: number, divisor: number, mode: RoundingMode): number {
  if (remainder === 0) return quotient;
  const { goesUp }: RoundingRule = ROUNDING[mode];
  return goesUp(remainder * 2 - divisor, quotient) ? quotient + 1 : quotient;
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
