import type { CloseDoubt } from '../time/close-time.ts';
import { type Instant, instant } from '../time/instant.ts';
import { type Moments, momentsIn, together } from '../time/moments-in-zone.ts';
import { asIfUtc, type WallTime } from '../time/resolve-wall-time.ts';
import { MINUTE } from '../time/units.ts';
import { type Zone, zone } from '../time/zone.ts';
import { zoneOffset } from '../time/zone-offset.ts';
import type { ZoneFamily } from './zone-word-table.ts';
import type { ZoneWord } from './zone-words.ts';

/** Where a time may hold that names no zone. */
export interface Whereabouts {
  readonly storeZone: Zone;
  readonly venueZone?: Zone | undefined;
  /** A zone stated beside the time, such as a column of its own. It wins over the venue's. */
  readonly zone?: Zone | undefined;
}

export interface Said extends Moments {
  readonly how: 'stated-offset' | 'stated-zone' | 'venue-zone' | 'store-zone';
}

/** What a wall time can mean with the zone words that go with it, none or several. */
export function momentsSaid(words: readonly ZoneWord[], wall: WallTime, where: Whereabouts): Said {
  const offset = words.find((word) => word.kind === 'offset');
  const families = words.filter((word) => word.kind === 'family');
  const places = words.flatMap((word) => (word.kind === 'place' ? word.zones : []));
  const settledHow = (read: Moments): Said => ({
    ...read,
    how: offset !== undefined && read.doubts.length === 0 ? 'stated-offset' : 'stated-zone',
  });
  const literal = offset?.minutes ?? families.find(({ letters }) => letters !== null)?.letters ?? null;
  const named = [...new Set(families.map(({ family }) => family))];
  if (named.length > 1) return severalFamilies(named, wall, where);
  if (named[0] !== undefined)
    return settledHow(inFamily(named[0], literal, wall, { named: places[0], venue: placeOf(where) }));
  if (places.length > 0) return settledHow(atPlaces(places, literal, wall, where));
  if (offset !== undefined) {
    const at = instant(asIfUtc(wall) - offset.minutes * MINUTE);
    return { zone: placeOf(where) ?? where.storeZone, moments: [at], doubts: [], how: 'stated-offset' };
  }
  if (words.some(({ kind }) => kind === 'own')) return { ...momentsIn(where.storeZone, wall), how: 'stated-zone' };
  return unsaid(wall, where);
}

const placeOf = ({ zone: stated, venueZone }: Whereabouts): Zone | undefined => stated ?? venueZone;

function unsaid(wall: WallTime, where: Whereabouts): Said {
  const read = momentsIn(placeOf(where) ?? where.storeZone, wall);
  if (where.zone !== undefined) return { ...read, how: 'stated-zone' };
  if (where.venueZone !== undefined) return { ...read, how: 'venue-zone' };
  return { ...read, doubts: [...read.doubts, 'no-zone'], how: 'store-zone' };
}

/**
 * Letters name an offset. It holds where the clocks of that family, or of a venue that shares its winter time, show it that
 * day; else it is a habit of the pen, and both are possible. A plain "ET" is what the family's clocks show, unless such a
 * venue keeps another time that day (Arizona in summer).
 */
function inFamily(
  family: ZoneFamily,
  literal: number | null,
  wall: WallTime,
  { named, venue }: { readonly named?: Zone | undefined; readonly venue?: Zone | undefined },
): Moments {
  const usual = momentsIn(zone(family.zone), wall);
  const place = named ?? venue;
  if (named !== undefined && !sharesWinter(named, family, wall))
    return together(usual.zone, [usual, momentsIn(named, wall)], 'abbreviation');
  const kin = place !== undefined && sharesWinter(place, family, wall) ? momentsIn(place, wall) : null;
  if (literal === null) {
    if (kin === null) return usual;
    return kin.moments.join() === usual.moments.join() ? kin : together(usual.zone, [usual, kin], 'abbreviation');
  }
  const at = instant(asIfUtc(wall) - literal * MINUTE);
  const settled = [kin, kin === null ? usual : null].find((reading) => reading !== null && settles(reading, at));
  if (settled) return { ...settled, moments: [at], doubts: [] };
  const written = { zone: usual.zone, moments: [at], doubts: [] };
  const readings = [written, usual, ...(kin === null ? [] : [kin])];
  return together(usual.zone, readings, 'abbreviation');
}

/** Old rules in this browser could hide that it is another moment; the hour that comes twice is what letters are for. */
const settles = ({ moments, doubts }: Moments, at: Instant): boolean =>
  moments.includes(at) && doubts.every((doubt) => doubt === 'overlap');

/** Whether a place keeps the family's standard time for some part of the year at least. */
function sharesWinter(place: Zone, { standardMinutes }: ZoneFamily, { date }: WallTime): boolean {
  const year = Number(date.slice(0, 4));
  const offsets = [0, 6].map((month) => zoneOffset(instant(Date.UTC(year, month, 15)), place) / MINUTE);
  return Math.min(...offsets) === standardMinutes;
}

/** A place by its name: where it has several clocks, the venue's says which. */
function atPlaces(places: readonly Zone[], literal: number | null, wall: WallTime, where: Whereabouts): Moments {
  const readings = places.map((place) => momentsIn(place, wall));
  const [first] = readings;
  if (first === undefined) return momentsIn(where.storeZone, wall);
  const venue = placeOf(where);
  const here = venue === undefined ? undefined : momentsIn(venue, wall);
  const settled = readings.find(({ moments }) => moments.join() === here?.moments.join());
  const read = readings.length === 1 ? first : (settled ?? together(first.zone, readings, 'abbreviation'));
  if (literal === null) return read;
  const at = instant(asIfUtc(wall) - literal * MINUTE);
  if (settles(read, at)) return { ...read, moments: [at], doubts: [] };
  return together(read.zone, [{ zone: read.zone, moments: [at], doubts: [] }, read], 'abbreviation');
}

function severalFamilies(families: readonly ZoneFamily[], wall: WallTime, where: Whereabouts): Said {
  const readings = families.map((family) => inFamily(family, null, wall, { venue: placeOf(where) }));
  const because: CloseDoubt = 'abbreviation';
  return { ...together(readings[0]?.zone ?? where.storeZone, readings, because), how: 'stated-zone' };
}
