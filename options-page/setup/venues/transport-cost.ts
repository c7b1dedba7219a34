import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import type { TransportRule } from '../../../src/domain/setup/venue.ts';

/** What a rule comes to for one car. */
export const transportCost = (rule: TransportRule): Cents =>
  rule.kind === 'flat' ? rule.cents : cents(Math.max(rule.minimumCents, rule.miles * rule.centsPerMile));
