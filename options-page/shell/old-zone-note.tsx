import { sayDate } from '../../src/domain/time/say-time.ts';
import { DAY } from '../../src/domain/time/units.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { dataIsOld, missedChange } from '../../src/domain/time/zone-data.ts';
import './who-asks.css';

const AHEAD = 60 * DAY;

/** Said where this browser does not know the newest rules of the store's own clock: every time on every screen may be off. */
export function OldZoneNote({ zone, now }: { zone: Zone; now: number }) {
  const missed = missedChange(zone);
  if (missed === null || !dataIsOld(zone, now + AHEAD)) return null;
  return (
    <section class="who-asks no-print" aria-label="Store time">
      <p>
        <span class="strong">Store time may be an hour off</span> from {sayDate(dateIn(zone, missed.since))} on: this
        browser does not know the newest clock rules of {zone}. Update the browser and the system. Reminders go by the
        moment of each close, so sales in other zones are not affected.
      </p>
    </section>
  );
}
