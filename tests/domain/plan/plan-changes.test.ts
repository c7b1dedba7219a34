import { expect, test } from 'vitest';
import type { Cents } from '../../../src/domain/money/cents.ts';
import type { Plan, PlanRow } from '../../../src/domain/plan/plan.ts';
import { planChanges } from '../../../src/domain/plan/plan-changes.ts';
import { dollars, NOW } from './made-up.ts';

function planOfBids(bids: Readonly<Record<string, number | null>>): Plan {
  const fixed = { close: NOW, maxBid: dollars(9_000), reason: { is: 'at-max' }, sentence: '' } as const;
  const rest = { chance: null, takes: null, fitsBesideProxies: true, batch: 0 } as const;
  const rows = Object.entries(bids).map(([lotId, bid]): PlanRow => {
    const plannedBid: Cents | null = bid === null ? null : dollars(bid);
    return { lotId, plannedBid, ...fixed, ...rest };
  });
  const nothing = dollars(0);
  return {
    rows,
    profit: nothing,
    bounds: { low: nothing, high: nothing },
    cars: 0,
    fan: [],
    worthOfThousand: nothing,
    worthOfLineThousand: nothing,
    worthOfPlace: nothing,
    ifPricesHigher: nothing,
    ifPricesLower: nothing,
    standing: { cash: nothing, line: nothing, cars: 0 },
    faults: [],
  };
}

test('what changed between two plans is said lot by lot, with by how much', () => {
  const before = planOfBids({ a: 8_000, b: 8_000, c: null, d: 7_000, gone: 5_000 });
  const after = planOfBids({ a: 8_350, b: null, c: 6_000, d: 7_000, added: 5_000 });
  expect(planChanges(before, after).map(({ lotId, sentence }) => [lotId, sentence])).toEqual([
    ['a', 'The planned bid is $8,350 now, up $350 from $8,000.'],
    ['b', 'No bid is planned now; it was $8,000.'],
    ['c', 'The planned bid is $6,000 now; there was none.'],
  ]);
});
