import type { Zone } from '../domain/time/zone.ts';
import type { PointedPlace } from './pointing/pointed-place.ts';

/** What the user has set up or done before that helps to read a page. All but the store's zone may be missing. */
export interface ReadContext {
  /** The zone in which the store lives; a time without any zone is read in it, and marked as doubtful. */
  readonly storeZone: Zone;
  /** The zone of the venue whose site this is, where the user has said so. */
  readonly venueZone?: Zone | undefined;
  /** Makes of lots that are watched already, so that one of several words is recognised. */
  readonly makes?: readonly string[] | undefined;
  /** Where the user pointed on this site before. */
  readonly places?: readonly PointedPlace[] | undefined;
}
