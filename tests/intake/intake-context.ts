import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import type { ReadContext } from '../../src/intake/rows/read-context.ts';

/** Thursday 2026-11-26, 9:00 at the store. */
export const NOW = instant(Date.parse('2026-11-26T16:00:00Z'));

export const CONTEXT: ReadContext = {
  now: NOW,
  storeZone: zone('America/Boise'),
  venues: [
    { id: 'saguaro', name: 'Saguaro Flats', zone: zone('America/Phoenix') },
    { id: 'saltmarsh', name: 'Saltmarsh Fleet', zone: zone('America/New_York') },
  ],
  titles: [
    { id: 'clean', name: 'Clean' },
    { id: 'salvage', name: 'Salvage' },
  ],
  from: 'file',
  readClose: readCloseTime,
};
