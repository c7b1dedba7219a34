import { ok, refuse } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../src/domain/time/local-date.ts';
import { resolveWallTime } from '../../src/domain/time/resolve-wall-time.ts';
import { isZone, zone } from '../../src/domain/time/zone.ts';
import type { CloseReader, ReadContext } from '../../src/intake/rows/read-context.ts';

/** Thursday 2026-11-26, 9:00 at the store. */
export const NOW = instant(Date.parse('2026-11-26T16:00:00Z'));

const ZONES: Record<string, string> = { ET: 'America/New_York', CT: 'America/Chicago', MT: 'America/Boise' };
const TEXT =
  /^(?:(\d{4})-(\d\d)-(\d\d)|(\d{1,2})\/(\d{1,2})\/(\d{4})),? (\d{1,2}):(\d\d)(?::(\d\d))? ?([AP]M)?(?: ([A-Za-z_/]+))?$/i;

/** Reads dates with a time, enough for these tests and nothing more: what the rows do with a close is tested here. */
export const readPlainClose: CloseReader = (text, { storeZone, venueZone, zone: given }) => {
  const m = TEXT.exec(text);
  if (m === null) return refuse('unreadable', `“${text}” is not a date and time.`);
  const [year, month, day] = m[1] ? [m[1], m[2], m[3]] : [m[6], m[4]?.padStart(2, '0'), m[5]?.padStart(2, '0')];
  const hour = (Number(m[7]) % (m[10] ? 12 : 24)) + (m[10]?.toUpperCase() === 'PM' ? 12 : 0);
  const letters = m[11] ?? '';
  const named = ZONES[letters] ?? letters;
  const inZone = given ?? (isZone(named) ? zone(named) : (venueZone ?? storeZone));
  const wall = {
    date: `${year}-${month}-${day}` as LocalDate,
    time: `${String(hour).padStart(2, '0')}:${m[8]}` as LocalTime,
    second: Number(m[9] ?? 0),
  };
  const found = resolveWallTime(wall, inZone);
  const unique = found.kind === 'unique';
  return ok({
    instant: found.earliest,
    text,
    zone: inZone,
    how: given || letters ? 'stated-zone' : venueZone ? 'venue-zone' : 'store-zone',
    doubts: found.kind === 'unique' ? [] : [found.kind],
    otherwise: unique ? [] : [found.latest],
  });
};

export const CONTEXT: ReadContext = {
  now: NOW,
  storeZone: zone('America/Boise'),
  venues: [
    { id: 'saguaro', name: 'Saguaro Flats', zone: zone('America/Phoenix') },
    { id: 'tidewater', name: 'Tidewater Fleet', zone: zone('America/New_York') },
  ],
  titles: [
    { id: 'clean', name: 'Clean' },
    { id: 'salvage', name: 'Salvage' },
  ],
  from: 'file',
  readClose: readPlainClose,
};
