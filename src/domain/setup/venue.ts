import * as z from 'zod/mini';
import { positiveCentsSchema, ZERO } from '../money/cents.ts';
import { incrementsSchema } from '../price/increments.ts';
import { zoneSchema } from '../time/zone.ts';
import { afterSaleRulesSchema } from './after-sale-rules.ts';
import { stateSchema } from './certificate.ts';

/** What it costs to bring a car home from a venue, unless a lot has its own quote. */
export const transportRuleSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('flat'), cents: positiveCentsSchema }),
  z.strictObject({
    kind: z.literal('per-mile'),
    miles: z.int().check(z.gte(0), z.lte(10_000), z.describe('road miles from the venue to the store')),
    centsPerMile: positiveCentsSchema,
    minimumCents: z._default(positiveCentsSchema, ZERO),
  }),
]);
export type TransportRule = z.infer<typeof transportRuleSchema>;

/** One place that sells: its zone, its fees, its steps and the way home. */
export const venueSchema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(60)),
  name: z.string().check(z.minLength(1), z.maxLength(80)),
  zone: zoneSchema,
  feeScheduleIds: z.array(z.string()).check(z.describe('ids of the fee schedules that a buyer pays here')),
  increments: incrementsSchema,
  transport: transportRuleSchema,
  /** Absent where nobody has said. */
  state: z.optional(stateSchema.check(z.describe('the state in which it sells, for resale certificates'))),
  /** Said by the dealer, so that $0 is a figure and not a blank. */
  noBuyFees: z.optional(
    z.literal(true).check(z.describe('a buyer pays no fee here; without it, a venue with no fees gets no max bid')),
  ),
  noTransport: z.optional(
    z.literal(true).check(z.describe('delivery from here is free; without it, $0 for transport gives no max bid')),
  ),
  /** Absent where nobody has said. */
  payWithinDays: z.optional(
    z.int().check(z.gte(0), z.lte(60), z.describe('days after the sale within which it must be paid')),
  ),
  /** Absent until the user has copied them from the venue's terms. */
  afterSale: z.optional(
    afterSaleRulesSchema.check(z.describe('what the venue’s terms say about the time after the hammer; optional')),
  ),
});
export type Venue = z.infer<typeof venueSchema>;
