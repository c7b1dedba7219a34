import * as z from 'zod/mini';
import { instantSchema } from '../time/instant.ts';

/** The fields of a page that a user may point at. */
export const POINTABLE = [
  'vin',
  'year',
  'make',
  'model',
  'trim',
  'miles',
  'lotNumber',
  'runNumber',
  'venueName',
  'sale',
  'seller',
  'location',
  'close',
  'priceNow',
  'nextBid',
  'increment',
  'buyNow',
  'title',
  'condition',
  'transmission',
  'drive',
] as const;

/** Host name of a sale site, without port. */
const hostSchema = z.string().check(z.minLength(1), z.maxLength(253));

/**
 * Where the user pointed for one field on one site: several ways to find the element again, and the text beside it that
 * must still be there for any of them to count.
 */
export const pointedPlaceSchema = z.strictObject({
  site: hostSchema,
  field: z.enum(POINTABLE),
  /** The label beside it, as it is compared: lower case, digits as `0`. */
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

/** What the user has said about one sale site. */
export const siteSchema = z.strictObject({
  site: hostSchema,
  /** `id` of the site's venue. */
  venueId: z.optional(z.string().check(z.minLength(1), z.maxLength(60))),
  /** One a field at most: pointing again replaces. */
  places: z.array(pointedPlaceSchema).check(z.maxLength(POINTABLE.length)),
});
export type Site = z.infer<typeof siteSchema>;

export const sitesSchema = z.array(siteSchema).check(
  z.maxLength(500),
  z.refine((sites) => new Set(sites.map(({ site }) => site)).size === sites.length, {
    error: 'two entries are about the same site',
  }),
);

/** What is known of a site; nothing, where nothing was said. */
export const siteOf = (sites: readonly Site[] | undefined, site: string): Site =>
  sites?.find((one) => one.site === site) ?? { site, places: [] };

/** The sites with `changed` in the place of what was known of it; one about which nothing is left goes. */
export function withSite(sites: readonly Site[] | undefined, changed: Site): Site[] {
  const others = (sites ?? []).filter(({ site }) => site !== changed.site);
  return changed.venueId === undefined && changed.places.length === 0 ? others : [...others, changed];
}

/** The site with a place remembered, instead of an older one for the same field. */
export function withPlace(site: Site, place: PointedPlace): Site {
  return { ...site, places: [...site.places.filter(({ field }) => field !== place.field), place] };
}
