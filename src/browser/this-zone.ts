import { isZone, type Zone, zone } from '../domain/time/zone.ts';

/** The zone this computer is set to; UTC where the browser names none that it knows itself. */
export function thisZone(): Zone {
  const name = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return zone(isZone(name) ? name : 'UTC');
}
