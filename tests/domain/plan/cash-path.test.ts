import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { cashPath } from '../../../src/domain/plan/cash-path.ts';
import type { Purse } from '../../../src/domain/plan/purse.ts';
import { instant } from '../../../src/domain/time/instant.ts';

function purse(cash: number, flows: readonly (readonly [at: number, amount: number])[]): Purse {
  return {
    cash: cents(cash),
    flows: flows.map(([at, amount]) => ({ at: instant(at), cents: cents(amount), what: '' })),
    reaction: 0,
    overChance: 0,
  };
}
const pathOf = (given: Purse) => cashPath(given, instant(0)).map(({ at, cents }) => [at, cents]);

describe('cash that may be promised', () => {
  test('is what there is, where nothing is dated', () => {
    expect(pathOf(purse(100, []))).toEqual([[0, 100]]);
  });

  test('leaves a later payment covered, and rises when money comes in', () => {
    expect(pathOf(purse(100, [[5, -30]]))).toEqual([[0, 70]]);
    expect(pathOf(purse(100, [[5, 30]]))).toEqual([
      [0, 100],
      [5, 130],
    ]);
  });

  test('counts on what comes in before a payment only from then on', () => {
    const both: [number, number][] = [
      [9, -50],
      [5, 30],
    ];
    expect(pathOf(purse(100, both))).toEqual([[0, 80]]);
  });

  test('is below 0 where a payment is not covered even with nothing bought', () => {
    expect(pathOf(purse(10, [[5, -30]]))).toEqual([[0, -20]]);
  });

  test('spent to the last cent at any moment leaves every later payment covered', () => {
    const flow = fc.tuple(fc.integer({ min: -3, max: 20 }), fc.integer({ min: -100, max: 100 }));
    fc.assert(
      fc.property(fc.integer({ min: -50, max: 200 }), fc.array(flow, { maxLength: 6 }), (cash, drawn) => {
        const flows = drawn.map(([at, amount]): [number, number] => [Math.max(0, at), amount]);
        const path = cashPath(purse(cash, flows), instant(0));
        const allowed = (at: number) => path.filter((step) => step.at <= at).at(-1)?.cents ?? Number.NaN;
        const balance = (at: number) => flows.reduce((sum, [when, amount]) => (when <= at ? sum + amount : sum), cash);
        for (let at = 0; at <= 20; at++) {
          for (let later = at; later <= 20; later++) expect(allowed(at)).toBeLessThanOrEqual(balance(later));
          if (at > 0) expect(allowed(at)).toBeGreaterThanOrEqual(allowed(at - 1));
        }
      }),
    );
  });
});
