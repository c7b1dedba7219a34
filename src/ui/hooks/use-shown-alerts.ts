import { useMemo } from 'preact/hooks';
import { type ClockCorrection, correctionsIn } from '../../domain/time/clock-correction.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Store } from '../../store/store.ts';
import type { StoreChange } from '../../store/write/touched.ts';
import { useFromStore } from './use-from-store.ts';

const read = (store: Store) => store.shownAlerts();
const concerns = ({ alerts }: StoreChange) => alerts;

/** When each alert was recorded as shown, by its key; read again whenever something is said. Null until it was read. */
export const useShownAlerts = (): ReadonlyMap<string, Instant> | null => useFromStore(read, concerns);

/** When clocks were put back, the latest first; none until that was read. */
export function useClockCorrections(): readonly ClockCorrection[] {
  const shown = useShownAlerts();
  return useMemo(() => correctionsIn(shown?.keys() ?? []), [shown]);
}
