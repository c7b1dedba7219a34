import * as z from 'zod/mini';
import { instantSchema } from '../../domain/time/instant.ts';
import { type DraftFieldName, draftFieldsSchema } from '../draft-lot.ts';

/** The fields a user may point at. */
export const POINTABLE = Object.keys(draftFieldsSchema.shape) as readonly DraftFieldName[];

/**
 * Where the user pointed for one field on one site: several ways to find the element again, and the text beside it that
 * must still be there for any of them to count.
 */
export const pointedPlaceSchema = z.strictObject({
  /** Host name of the site, without port. */
  site: z.string().check(z.minLength(1), z.maxLength(253)),
  field: z.enum(POINTABLE as [DraftFieldName, ...DraftFieldName[]]),
  /** The label beside it, as `anchorOf` compares it: lower case, digits as `0`. */
  anchor: z.string().check(z.minLength(1), z.maxLength(80)),
  /** The label as it was printed, to be shown. */
  label: z.string().check(z.minLength(1), z.maxLength(80)),
  tag: z.string().check(z.regex(/^[a-z][a-z0-9-]{0,40}$/)),
  /** An id that looks made by a person and not by a program. */
  id: z.optional(z.string().check(z.minLength(1), z.maxLength(80))),
  attribute: z.optional(
    z.strictObject({
      name: z.string().check(z.regex(/^[a-z][a-z0-9-]{0,60}$/)),
      value: z.string().check(z.minLength(1), z.maxLength(80)),
    }),
  ),
  /** Tags and positions from the page, or from an element with such an id, down to it: `#bid>dl:1>dd:3`. */
  path: z.string().check(z.minLength(1), z.maxLength(1000)),
  /** What it said when it was pointed at. */
  sample: z.string().check(z.maxLength(200)),
  at: instantSchema,
});
export type PointedPlace = z.infer<typeof pointedPlaceSchema>;
