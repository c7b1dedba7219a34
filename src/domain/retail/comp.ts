import * as z from 'zod/mini';
import { centsSchema, positiveCentsSchema } from '../money/cents.ts';
import { localDateSchema } from '../time/local-date.ts';

/** Something that this lot has and the comparable lacks (added), or the other way round (taken off). */
export const compDifferenceSchema = z.strictObject({
  label: z.string().check(z.minLength(1), z.maxLength(80)),
  cents: centsSchema.check(
    z.describe('what to add to its price to make it like this lot; whole cents, may be negative'),
  ),
});
export type CompDifference = z.infer<typeof compDifferenceSchema>;

/** A car like this one that sold, or that somebody asks a price for. */
export const compSchema = z
  .strictObject({
    kind: z.enum(['sold', 'asking']),
    price: positiveCentsSchema.check(z.gte(1)),
    miles: z.optional(z.int().check(z.gte(0), z.lte(2_000_000))),
    year: z.optional(z.int().check(z.gte(1886), z.lte(2100))),
    differences: z._default(z.array(compDifferenceSchema).check(z.maxLength(20)), []),
    /** When it sold, or when its price was seen. */
    date: z.optional(localDateSchema),
    /** How long it has been, or was, for sale. */
    daysListed: z.optional(z.int().check(z.gte(0), z.lte(3650))),
    /** Where it was seen, in the buyer's words. */
    source: z.optional(z.string().check(z.maxLength(200))),
    /** Kept and shown, but not counted. */
    leftOut: z._default(z.boolean(), false),
  })
  .check(
    z.refine((comp) => comp.differences.reduce((sum, one) => sum + one.cents, 0) > -comp.price / 2, {
      error: 'the differences take off half of the price or more: that car is not comparable',
    }),
  );
export type Comp = z.infer<typeof compSchema>;

/** More would not fit on a screen, nor change the answer. */
export const compsSchema = z.array(compSchema).check(z.maxLength(200));
