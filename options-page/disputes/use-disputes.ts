import { useMemo } from 'preact/hooks';
import { useLotsAfterSale } from '../../src/ui/hooks/use-after-lots.ts';
import { useBookedLots } from '../../src/ui/hooks/use-booked-lots.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { disputesUnder, type ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';

/** All disputes; null until they are read. */
export function useDisputes(): readonly ShownDispute[] | null {
  const { setup } = useWorkspace();
  const lots = useLotsAfterSale();
  const bookedOf = useBookedLots();
  return useMemo(() => (bookedOf && lots?.flatMap(disputesUnder(setup, bookedOf))) ?? null, [lots, setup, bookedOf]);
}
