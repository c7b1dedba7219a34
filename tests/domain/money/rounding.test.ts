import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mulDivRound, ROUNDING_MODES, type RoundingMode } from '../../../src/domain/money/rounding.ts';

/** What decimal.js calls each; one that is missing does not compile. */
const DECIMAL_MODE: Record<RoundingMode, Decimal.Rounding> = {
  'half-up': Decimal.ROUND_HALF_UP,
  'half-even': Decimal.ROUND_HALF_EVEN,
  up: Decimal.ROUND_UP,
  down: Decimal.ROUND_DOWN,
};
const mode = fc.constantFrom(...ROUNDING_MODES);
/** Often one that leaves halves: by chance alone they hardly come. */
const divisors = fc.oneof(fc.constantFrom(2, 4, 10, 1e12), fc.integer({ min: 1, max: 1e8 }));

describe('rounding once', () => {
  test('agrees with decimal.js for every mode, beyond 2^53 too', () => {
    const Wide = Decimal.clone({ precision: 60 });
    fc.assert(
      fc.property(
        fc.integer({ min: -1e12, max: 1e12 }),
        fc.oneof(fc.integer({ min: 0, max: 1e8 }), fc.integer({ min: 0, max: 1e14 })),
        divisors,
        mode,
        (value, multiplier, divisor, how) => {
          const exact = new Wide(value).times(multiplier).div(divisor);
          fc.pre(exact.abs().lt(Number.MAX_SAFE_INTEGER));
          const expected = exact.toDecimalPlaces(0, DECIMAL_MODE[how]).toNumber();
          expect(mulDivRound(value, multiplier, divisor, how) + 0).toBe(expected + 0);
        },
      ),
      { numRuns: 5000 },
    );
  });

  // computed independently: big.js, decimal.js and Python's decimal agree on these.
  test.each([
    [5, 'half-even', 0],
    [5, 'half-up', 1],
    [15, 'half-even', 2],
    [25, 'half-even', 2],
    [25, 'half-up', 3],
    [-25, 'half-even', -2],
    [-25, 'half-up', -3],
    [35, 'half-even', 4],
  ] as const)('%i tenths, %s, is %i', (tenths, how, expected) => {
    expect(mulDivRound(tenths, 1, 10, how)).toBe(expected);
  });
});
