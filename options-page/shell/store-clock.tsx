import { sayClock, sayDate } from '../../src/domain/time/say-time.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';

/** The time where the dealership stands: every close is shown by this clock. */
export function StoreClock({ zone, name }: { zone: Zone; name: string }) {
  const now = useNow(1000);
  return (
    <div class="store-clock small">
      <div class="quiet">{name || 'Store time'}</div>
      <div class="strong">
        <span class="clock-day">{sayDate(dateIn(zone, now))}, </span>
        {sayClock(now, zone)}
      </div>
    </div>
  );
}
