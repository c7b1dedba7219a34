import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceFalse, doubtLines } from '../../../src/domain/claims/doubt-lines.ts';
import { nextChecks, worthOfKnowing } from '../../../src/domain/claims/next-check.ts';
import { CLAIM_EVIDENCE, type Claim, claimSchema } from '../../../src/domain/lot/claim.ts';
import { cents, sumCents } from '../../../src/domain/money/cents.ts';
import { PPM } from '../../../src/domain/money/rate.ts';
import { DEFAULT_ESTIMATION } from '../../../src/domain/retail/estimation.ts';

const { doubt } = DEFAULT_ESTIMATION;
const claim = (over: object): Claim =>
  claimSchema.parse({ about: 'transmission', statement: 'Manual transmission', worthIfFalse: 6_400_00, ...over });

describe('doubt about a listing', () => {
  test('costs the chance that a statement is false times what that takes off the car', () => {
    expect(doubtLines([claim({})], doubt)).toEqual([
      {
        kind: 'doubt',
        label: 'Doubt: Manual transmission (stated only, false 10% of the time)',
        cents: 640_00,
        range: { low: 0, high: 6_400_00 },
      },
    ]);
  });

  test('shrinks with the evidence, is nothing once confirmed, and is everything once refuted', () => {
    const costs = CLAIM_EVIDENCE.map((evidence) =>
      sumCents(doubtLines([claim({ evidence })], doubt).map((l) => l.cents)),
    );
    expect(costs).toEqual([640_00, 256_00, 128_00, 0, 6_400_00]);
    expect(doubtLines([claim({ evidence: 'refuted' })], doubt)[0]?.label).toBe('Doubt: Manual transmission (refuted)');
  });

  test('goes by the buyer’s own figure, unless the claim is refuted', () => {
    expect(chanceFalse(claim({ chanceFalse: 300_000 }), doubt)).toBe(300_000);
    expect(chanceFalse(claim({ chanceFalse: 300_000, evidence: 'refuted' }), doubt)).toBe(PPM);
  });
});

describe('the next check', () => {
  test('is a photo of the pedals when the transmission is in doubt', () => {
    const [check] = nextChecks([claim({ worthIfFalse: 7_111_11 })], doubt);
    expect(check?.sentence).toBe('A photo of the pedals is worth up to $640.');
    expect(check).toMatchObject({ ifTrue: 711_11, ifFalse: 6_400_00, worth: 640_00 });
  });

  test('comes first where most money hangs on it, and the easier first of two equal ones', () => {
    const checks = nextChecks(
      [
        claim({ about: 'title', statement: 'Clean title' }),
        claim({ about: 'drive', statement: 'Four-wheel drive', worthIfFalse: 9_000_00 }),
        claim({}),
        claim({ evidence: 'confirmed' }),
        claim({ evidence: 'refuted' }),
      ],
      doubt,
    );
    expect(checks.map(({ index }) => index)).toEqual([1, 2, 0]);
  });

  test('is worth most at the max bid and nothing where no answer would change the bid (worked by hand)', () => {
    const worth = (surplus: number) => worthOfKnowing(cents(6_400_00), 0.1, cents(surplus));
    expect(worth(0)).toBe(576_00);
    expect(worth(1_000_00)).toBe(476_00);
    expect(worth(5_760_00)).toBe(0);
    expect(worth(-640_00)).toBe(0);
    expect(worth(-320_00)).toBe(288_00);
  });

  test('is never worth less than nothing, nor more than at the max bid', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2_000_000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: -3_000_000, max: 3_000_000 }),
        (stake, q, surplus) => {
          const worth = worthOfKnowing(cents(stake), q, cents(surplus));
          expect(worth).toBeGreaterThanOrEqual(0);
          expect(worth).toBeLessThanOrEqual(worthOfKnowing(cents(stake), q, cents(0)) + 1);
        },
      ),
    );
  });
});
