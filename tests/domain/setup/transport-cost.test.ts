import { expect, test } from 'vitest';
import { transportCost } from '../../../src/domain/setup/transport-cost.ts';
import { transportRuleSchema } from '../../../src/domain/setup/venue.ts';

const cost = (rule: object) => transportCost(transportRuleSchema.parse(rule));

test('transport by the mile is at least its minimum', () => {
  expect(cost({ kind: 'flat', cents: 40_000 })).toBe(40_000);
  expect(cost({ kind: 'per-mile', miles: 930, centsPerMile: 85, minimumCents: 35_000 })).toBe(79_050);
  expect(cost({ kind: 'per-mile', miles: 30, centsPerMile: 85, minimumCents: 35_000 })).toBe(35_000);
});
