import * as z from 'zod/mini';
import { evidenceByFieldSchema } from '../../domain/lot/evidence.ts';
import { lotFactsSchema, lotIdSchema, lotSourceSchema } from '../../domain/lot/lot.ts';
import { instantSchema } from '../../domain/time/instant.ts';

const newLotSchema = z.strictObject({
  id: lotIdSchema,
  facts: lotFactsSchema,
  evidence: evidenceByFieldSchema,
});
export type NewLot = z.infer<typeof newLotSchema>;

/** Lots come in, change, and are let go. */
export const WATCHING = [
  /** One or many lots came in at once; an import of 50,000 is a few hundred of these. */
  z.strictObject({
    kind: z.literal('lots-added'),
    source: lotSourceSchema,
    lots: z.array(newLotSchema).check(z.minLength(1)),
  }),
  /** Fields of a lot were set or emptied. */
  z.strictObject({
    kind: z.literal('lot-changed'),
    set: lotFactsSchema,
    clear: z._default(z.array(z.keyof(lotFactsSchema)), []),
    evidence: evidenceByFieldSchema,
    /** When the price now was seen, where that was not when it was written down. */
    seenAt: z.optional(instantSchema),
  }),
  /** The buyer stopped watching a lot; it stays in the journal. */
  z.strictObject({ kind: z.literal('lot-dropped') }),
] as const;
