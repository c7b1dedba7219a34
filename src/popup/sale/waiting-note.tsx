import { useEffect, useState } from 'preact/hooks';
import { instant } from '../../domain/time/instant.ts';
import { DAY } from '../../domain/time/units.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Store } from '../../store/store.ts';
import { countWords } from '../../views/words/count-words.ts';

const FORTNIGHT_MS = 14 * DAY;

/** How many closings of the last two weeks wait for a result; read once the popup stands, so that nobody waits for it. */
export function WaitingNote({ store, onOpen }: { store: Store; onOpen: () => void }) {
  const [waiting, setWaiting] = useState(0);
  useEffect(() => {
    const now = Date.now();
    store.lotsByClose({ from: instant(now - FORTNIGHT_MS), before: instant(now) }).then(
      (lots) => setWaiting(lots.filter(waits).length),
      (error: unknown) => reportError(error),
    );
  }, [store]);
  return waiting === 0 ? null : (
    <button type="button" onClick={onOpen}>
      {countWords(waiting, 'closing', 'closings')} without a result
    </button>
  );
}

const waits = ({ sale }: LotState): boolean => sale?.result === undefined || sale.result.result.ended === 'pending';
