import { expect, test } from 'vitest';
import { changeOf, effectOf } from '../../../../src/domain/learn/corrections/effect.ts';
import type { LotId } from '../../../../src/domain/lot/lot.ts';
import { pricingContext } from '../../../../src/domain/worksheet/pricing-context.ts';
import { SETUP, sheetOf, van } from '../../appraisal/lot-for-tests.ts';

const lot = (id: string, facts: object) => ({ lot: id as LotId, title: id, facts: van(facts) });
const corrections = { retailLevel: { factorPpm: 950_000 as never, since: 0 as never, cases: 9 } };

test('the effect of a switch counts the lots that move, the one that moves most first, and leaves out those without a figure', () => {
  const lots = [
    lot('cheap', { retail: { likely: 9_000_00 } }),
    lot('dear', { retail: { likely: 30_000_00 } }),
    lot('hopeless', { retail: { likely: 100_00 } }),
    lot('unknown', { retail: undefined }),
  ];
  const after = { ...SETUP, corrections };
  const work = effectOf(lots, pricingContext(SETUP), pricingContext(after));
  const steps: unknown[] = [];
  let step = work.next();
  for (; !step.done; step = work.next()) steps.push(step.value);
  // It stops after each lot, so that a page can breathe.
  expect(steps).toEqual([0, 1, 2, 3]);
  const { lots: counted, moved, average } = step.value;
  expect(counted).toBe(2);
  expect(moved.map((one) => one.lot)).toEqual(['dear', 'cheap']);
  expect(moved[0]?.after).toBe(sheetOf(van({ retail: { likely: 30_000_00 } }), after).result.maxBid);
  expect(average).toBe(moved.reduce((sum, one) => sum + changeOf(one), 0) / 2);
});
