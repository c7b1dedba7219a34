import * as z from 'zod/mini';
import { positiveCentsSchema } from '../money/cents.ts';
import { sharePpmSchema } from '../money/rate.ts';
import { instantSchema } from '../time/instant.ts';

/** What somebody did or saw at the sale. Headroom never bids: it keeps what its user says that he did. */
export const bidActionSchema = z.strictObject({
  action: z.enum([
    'proxy-placed',
    'proxy-raised',
    'proxy-cut',
    'proxy-withdrawn',
    'live-bid',
    'confirmation-seen',
    'result-seen',
  ]),
  /** The amount of the bid, or that was seen. */
  cents: z.optional(positiveCentsSchema),
  /** When it was done, which may be before it was written down. */
  at: instantSchema,
  /** Why, for a bid above the max bid. */
  why: z.optional(z.string().check(z.minLength(1), z.maxLength(400))),
  /** The max bid at that moment; null when no price worked, absent when none was known. */
  maxBidCents: z.optional(z.nullable(positiveCentsSchema)),
  /** What the plan bid at that moment; null when it left the lot out, absent when there was no plan for it. */
  plannedCents: z.optional(z.nullable(positiveCentsSchema)),
  /** The chance to win that was given to it then, ppm; absent when there was not enough history to say. */
  chancePpm: z.optional(sharePpmSchema),
  /**
   * What the venue says of our bid: that it has it, that it leads, that another leads, or that it never got it. Of one that was
   * withdrawn, `accepted`: it let us go.
   */
  says: z.optional(z.enum(['accepted', 'high-bidder', 'outbid', 'not-in'])),
  /** Written down after the close, by the word of him who did it: `at` is then the close, the latest it can have been. */
  noted: z.optional(z.literal('after-close')),
  /** Who did it, when that is not the one who writes. */
  by: z.optional(z.string().check(z.minLength(1), z.maxLength(80))),
  /** The page on which it was done. Its words are the page's own: data, never markup. */
  page: z.optional(
    z.strictObject({ url: z.string().check(z.maxLength(2000)), title: z.string().check(z.maxLength(400)) }),
  ),
  /** SHA-256 of a picture of the page, which is kept as an attachment. */
  picture: z.optional(z.string().check(z.regex(/^[0-9a-f]{64}$/))),
});
export type BidAction = z.infer<typeof bidActionSchema>;
