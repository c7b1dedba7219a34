import { getTimezoneOffset } from 'date-fns-tz/getTimezoneOffset';
import * as z from 'zod/mini';

/** Zones found good before. Asking the browser takes some 70 µs, and an import of 50,000 lots asks it for every one of them. */
const knownZones = new Set<string>();

/** Whether this runtime knows `zone` as an IANA zone of the Area/Place form (or UTC). Abbreviations are never zones. */
export function isZone(zone: string): boolean {
  if (knownZones.has(zone)) return true;
  if (zone !== 'UTC' && !/^[A-Za-z_]+\/[A-Za-z0-9_+/-]+$/.test(zone)) return false;
  const known = !Number.isNaN(getTimezoneOffset(zone, new Date(0)));
  if (known) knownZones.add(zone);
  return known;
}

/** An IANA zone name such as America/Denver. */
export const zoneSchema = z
  .string()
  .check(
    z.refine(isZone, { error: 'not an IANA zone such as America/Denver' }),
    z.describe('an IANA time zone such as America/Denver'),
  )
  .brand<'Zone'>();
export type Zone = z.infer<typeof zoneSchema>;

/** @throws RangeError when `name` is not a zone this runtime knows. */
export function zone(name: string): Zone {
  if (!isZone(name)) throw new RangeError(`not an IANA zone: ${name}`);
  return name as Zone;
}
