import { cents, ZERO } from '../../../src/domain/money/cents.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import type { Zone } from '../../../src/domain/time/zone.ts';
import { freshId } from '../../../src/ui/fresh-id.ts';

/** A venue to be filled in; it is kept once it has a name. */
export function newVenue(storeZone: Zone): Venue {
  return {
    id: freshId('venue'),
    name: '',
    zone: storeZone,
    feeScheduleIds: [],
    increments: [{ fromCents: ZERO, stepCents: cents(10_000) }],
    transport: { kind: 'flat', cents: ZERO },
  };
}
