import type { ReadContext } from '../capture/read-context.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { siteOf } from '../domain/setup/site.ts';
import type { LotState } from '../folds/lot-state.ts';

const MOST_MAKES = 300;

/** What the setup and the lots watched so far tell the reader before it looks at a page of `site`. */
export function readingContext(site: string, setup: Setup, lots: readonly LotState[]): ReadContext {
  const known = siteOf(setup.sites, site);
  const venue = setup.venues.find(({ id }) => id === known.venueId);
  const makes = new Set(lots.flatMap(({ facts }) => (facts.make && facts.make.length <= 80 ? [facts.make] : [])));
  return {
    storeZone: setup.store.zone,
    ...(venue === undefined ? {} : { venueZone: venue.zone }),
    makes: [...makes].slice(0, MOST_MAKES),
    places: known.places,
  };
}

/** The host name of a page; empty for what is no web page. */
export function siteOfUrl(url: string | undefined): string {
  const parsed = url === undefined ? null : URL.parse(url);
  return parsed !== null && /^https?:$/.test(parsed.protocol) ? parsed.hostname : '';
}
