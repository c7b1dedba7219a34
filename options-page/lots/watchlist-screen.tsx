import { useMemo, useRef, useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { usePrinting } from '../../src/ui/hooks/use-printing.ts';
import { useStandings } from '../../src/ui/hooks/use-standings.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { FIRST_VIEW } from '../../src/views/lots/first-view.ts';
import { orderLots } from '../../src/views/lots/list-order.ts';
import { wordsUnder } from '../../src/views/lots/words-under.ts';
import { EmptyList } from './empty-list.tsx';
import { KeySheet } from './key-sheet.tsx';
import { ListTools } from './list-tools.tsx';
import { LotTable } from './lot-table.tsx';
import { PrintedList } from './printed-list.tsx';
import { SaveButton } from './save-button.tsx';
import { useListKeys } from './use-list-keys.ts';
import './watchlist.css';

/** The lots that are watched, next close first, each with the price at which to stop. */
export function WatchlistScreen() {
  const { lots, complete, setup, setupKept } = useWorkspace();
  const now = useNow(1000);
  // Sorting every second would move rows under the finger for no gain; the minute is what changes who is shown.
  const minute = Math.floor(now / MINUTE) * MINUTE;
  const [view, setView] = useState(FIRST_VIEW);
  const [keysOpen, setKeysOpen] = useState(false);
  const searchBox = useRef<HTMLInputElement>(null);
  const table = useRef<HTMLDivElement>(null);
  const printing = usePrinting();

  const byFigure = view.sort === 'headroom' || view.sort === 'max-bid' || view.sort === 'todo';
  const { standings, settled } = useStandings(setup, lots, byFigure);
  // `settled` is a dependency because what `rough` answers has changed by then.
  const shown = useMemo(
    () => orderLots(lots, view, settled ? standings : standings.rough, instant(minute)),
    [lots, view, standings, minute, settled],
  );
  const wordsOf = useMemo(() => wordsUnder(setup, standings, lots), [setup, standings, lots]);
  useListKeys({ table, searchBox, onKeySheet: () => setKeysOpen((open) => !open) });

  if (lots.length === 0 && complete) return <EmptyList setupKept={setupKept} />;
  return (
    <div class="watchlist">
      <h1 class="visually-hidden">Lots</h1>
      <ListTools
        view={view}
        onView={setView}
        shown={shown.length}
        known={lots.length}
        complete={complete && (settled || !byFigure)}
        searchBox={searchBox}
        onKeySheet={() => setKeysOpen(true)}
      >
        <SaveButton lots={shown} works={standings} />
      </ListTools>
      {printing ? (
        <PrintedList lots={shown} works={standings} />
      ) : (
        <LotTable lots={shown} view={view} onView={setView} wordsOf={wordsOf} now={now} table={table} />
      )}
      {shown.length === 0 && (
        <p class="watchlist-none">
          None of the {lots.length.toLocaleString('en-US')} lots match.{' '}
          <button type="button" class="plain" onClick={() => setView({ ...FIRST_VIEW, show: 'all' })}>
            Show all
          </button>
        </p>
      )}
      {keysOpen && <KeySheet onClose={() => setKeysOpen(false)} />}
    </div>
  );
}
