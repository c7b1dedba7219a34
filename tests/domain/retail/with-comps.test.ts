import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Comp } from '../../../src/domain/retail/comp.ts';
import { withComps } from '../../../src/domain/retail/with-comps.ts';

test('a car that was seen before is there once, with what it asks now; sold ones and those without a place stay', () => {
  const comp = (price: number, source?: string, kind: Comp['kind'] = 'asking'): Comp => ({
    kind,
    price: cents(price),
    differences: [],
    leftOut: false,
    ...(source !== undefined && { source }),
  });
  const before = [comp(3_190_000, 'a'), comp(3_000_000), comp(2_900_000, 'a', 'sold')];
  expect(withComps(before, [comp(3_090_000, 'a'), comp(2_800_000, 'b')])).toEqual([
    comp(3_000_000),
    comp(2_900_000, 'a', 'sold'),
    comp(3_090_000, 'a'),
    comp(2_800_000, 'b'),
  ]);
});
