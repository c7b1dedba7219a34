import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { isZone, type Zone, zone } from '../../domain/time/zone.ts';

export interface ZoneName {
  readonly zone: Zone;
  /** The name it goes by in English, such as "Mountain Time". */
  readonly name: string;
}

let known: readonly ZoneName[] | undefined;

/** Every zone this browser knows (which only Intl can say), those of the United States first. Worked out once, when it is first asked for. */
export function zoneNames(): readonly ZoneName[] {
  known ??= Intl.supportedValuesOf('timeZone')
    .filter(isZone)
    .map((id) => ({ zone: zone(id), name: genericName(id) }))
    .sort((a, b) => rank(a) - rank(b) || (a.zone < b.zone ? -1 : 1));
  return known;
}

const HOME = ['America/New_York', 'America/Chicago', 'America/Denver', 'America/Phoenix', 'America/Los_Angeles'];

function rank({ zone, name }: ZoneName): number {
  const home = HOME.indexOf(zone);
  if (home >= 0) return home;
  return /^(Eastern|Central|Mountain|Pacific|Alaska|Hawaii)/.test(name) ? HOME.length : HOME.length + 1;
}

/** The name without daylight or standard time in it, as a clause such as "Mountain Standard Time" for places that never change. */
function genericName(id: string): string {
  const parts = new Intl.DateTimeFormat('en-US', { timeZone: id, timeZoneName: 'longGeneric' }).formatToParts(0);
  return parts.find((part) => part.type === 'timeZoneName')?.value ?? id;
}

/** Reads a zone by its full name, or by the place in it: "America/Phoenix", "phoenix", "new york". */
export function readZone(text: string): Outcome<Zone> {
  const wanted = text.trim().replace(/\s+/g, '_').toLowerCase();
  if (wanted === 'utc') return ok(zone('UTC'));
  const exact = zoneNames().find((each) => each.zone.toLowerCase() === wanted);
  if (exact !== undefined) return ok(exact.zone);
  const places = zoneNames().filter((each) => each.zone.toLowerCase().endsWith(`/${wanted}`));
  if (places[0] !== undefined && places.length === 1) return ok(places[0].zone);
  // Older names for a zone are not in the browser's list and still hold.
  if (text.includes('/') && isZone(text.trim())) return ok(zone(text.trim()));
  const called = zoneNames().filter((each) => each.name.toLowerCase() === text.trim().toLowerCase());
  const choices = [...places, ...called].slice(0, 4).map((each) => each.zone);
  if (choices.length > 0) {
    return refuse('several', `Several zones go by that name: ${choices.join(', ')}. Write one of them.`);
  }
  return refuse(
    'not-a-zone',
    'This is not a zone the browser knows. Write a large city in it, such as Denver or Phoenix, and choose from the list.',
  );
}
