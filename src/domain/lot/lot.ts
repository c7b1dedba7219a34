import * as z from 'zod/mini';
import { positiveCentsSchema } from '../money/cents.ts';
import { estimateSchema, reconLineSchema } from '../money/estimate.ts';
import { ceilingsSchema } from '../retail/ceiling.ts';
import { compsSchema } from '../retail/comp.ts';
import { sealedSaleSchema } from '../risk/sealed-sale.ts';
import { closeTimeSchema } from '../time/close-time.ts';
import { claimsSchema } from './claim.ts';
import { unreadCellsSchema } from './unread-cell.ts';

const shortText = z.string().check(z.maxLength(200));

export const lotIdSchema = z
  .string()
  .check(z.regex(/^[0-9A-HJKMNP-TV-Z]{26}$/))
  .brand<'LotId'>();
export type LotId = z.infer<typeof lotIdSchema>;

/** Every fact about a lot that the buyer can state or change. Each is optional: a lot is worth keeping half known. */
export const lotFactsSchema = z.strictObject({
  /** 17 characters, upper case, no blanks; may fail its check digit, which is shown and not repaired. */
  vin: z.optional(z.string().check(z.maxLength(17))),
  year: z.optional(z.int().check(z.gte(1886), z.lte(2100))),
  make: z.optional(shortText),
  model: z.optional(shortText),
  trim: z.optional(shortText),
  /** Odometer in whole miles. */
  miles: z.optional(z.int().check(z.gte(0), z.lte(2_000_000))),
  /** Lot or run number as the sale prints it. */
  lotNumber: z.optional(shortText),
  /** `id` of a venue in the setup, when it is known there. */
  venueId: z.optional(shortText),
  /** The venue as it was written, kept even when it is not in the setup. */
  venueName: z.optional(shortText),
  sale: z.optional(shortText),
  seller: z.optional(shortText),
  location: z.optional(shortText),
  close: z.optional(closeTimeSchema),
  /** There when bids are handed in unseen. */
  sealed: z.optional(sealedSaleSchema),
  /** The price now: the bid that stands, not the next one. */
  priceNow: z.optional(positiveCentsSchema),
  /** The lot's own step, where it differs from the venue's. */
  increment: z.optional(positiveCentsSchema.check(z.gte(1))),
  retail: z.optional(estimateSchema),
  /** Cars like this one that sold or are for sale. */
  comps: z.optional(compsSchema),
  /** What a customer could buy instead. */
  ceilings: z.optional(ceilingsSchema),
  /** Statements of the listing that carry money. */
  claims: z.optional(claimsSchema),
  recon: z.optional(z.array(reconLineSchema)),
  /** `id` of a title brand in the setup. */
  titleId: z.optional(shortText),
  /** A quote for bringing it home; overrides the venue's rule. */
  transport: z.optional(positiveCentsSchema),
  /** The proxy bid that was placed at the sale, by the user's word. */
  proxy: z.optional(positiveCentsSchema),
  funding: z.optional(z.enum(['floor', 'cash'])),
  /** Figures of the sale's table that nobody has settled yet. */
  unread: z.optional(unreadCellsSchema),
  notes: z.optional(z.string().check(z.maxLength(4000))),
  pageUrl: z.optional(z.string().check(z.maxLength(2000))),
});
export type LotFacts = z.infer<typeof lotFactsSchema>;
export type LotField = keyof LotFacts;

/** How a lot came in. */
export const lotSourceSchema = z.enum(['typed', 'pasted', 'file', 'page']);
export type LotSource = z.infer<typeof lotSourceSchema>;
