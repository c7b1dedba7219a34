import { useMemo } from 'preact/hooks';
import { useLotsAfterSale } from '../../src/ui/hooks/use-after-lots.ts';
import { useBookedLots } from '../../src/ui/hooks/use-booked-lots.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { disputesUnder, type ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';
import { eachLot, type LotApart } from '../../src/views/lots-apart.ts';

/** All disputes, and the lots whose disputes can't be worked out; null until they are read. */
export function useDisputes(): {
  readonly disputes: readonly ShownDispute[];
  readonly apart: readonly LotApart[];
} | null {
  const { setup } = useWorkspace();
  const lots = useLotsAfterSale();
  const bookedOf = useBookedLots();
  return useMemo(() => {
    if (bookedOf === null || lots === null) return null;
    const { done, apart } = eachLot(lots, disputesUnder(setup, bookedOf));
    return { disputes: done.flat(), apart };
  }, [lots, setup, bookedOf]);
}
