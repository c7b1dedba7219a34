import * as z from 'zod/mini';
import { pointedPlaceSchema } from '../domain/setup/site.ts';
import { zoneSchema } from '../domain/time/zone.ts';

/** What the user has set up or done before that helps to read a page. All but the store's zone may be missing. */
export const readContextSchema = z.strictObject({
  /** The zone in which the store lives; a time without any zone is read in it, and marked as doubtful. */
  storeZone: zoneSchema,
  /** The zone of the venue whose site this is, where the user has said so. */
  venueZone: z.optional(zoneSchema),
  /** Makes of lots that are watched already, so that one of several words is recognized. */
  makes: z.optional(z.readonly(z.array(z.string().check(z.minLength(1), z.maxLength(80))).check(z.maxLength(500)))),
  /** Where the user pointed on this site before. */
  places: z.optional(z.readonly(z.array(pointedPlaceSchema).check(z.maxLength(100)))),
});
export type ReadContext = Readonly<z.infer<typeof readContextSchema>>;
