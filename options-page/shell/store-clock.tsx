import { sayTime } from '../../src/domain/time/say-time.ts';
import type { Zone } from '../../src/domain/time/zone.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';

/** The time where the dealership stands: every close is shown by this clock. */
export function StoreClock({ zone, name }: { zone: Zone; name: string }) {
  const now = useNow(1000);
  return (
    <div class="store-clock small">
      <div class="quiet">{name || 'Store time'}</div>
      <div class="strong">{sayTime(now, zone)}</div>
    </div>
  );
}
