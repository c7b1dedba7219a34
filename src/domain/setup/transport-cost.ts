import { type Cents, cents, LARGEST_CENTS } from '../money/cents.ts';
import type { TransportRule, Venue } from './venue.ts';

/** What a rule comes to for one car, in whole cents. */
export const transportCost = (rule: TransportRule): Cents =>
  rule.kind === 'flat'
    ? rule.cents
    : cents(Math.max(rule.minimumCents, Math.min(LARGEST_CENTS, rule.miles * rule.centsPerMile)));

/** Whether a car from the venue would come home for $0 without anybody having said that it does. */
export const isTransportUnsaid = ({ noTransport, transport }: Venue): boolean =>
  noTransport !== true && transportCost(transport) === 0;
