import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { usePrinting } from '../../src/ui/hooks/use-printing.ts';
import { Lazy } from '../../src/ui/lazy.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { FIRST_VIEW } from '../../src/views/lots/first-view.ts';
import type { ListView } from '../../src/views/lots/list-order.ts';
import { wordsUnder } from '../../src/views/lots/words-under.ts';
import { listMemory } from '../place/list-memory.ts';
import { EmptyList } from './empty-list.tsx';
import { KeySheet } from './key-sheet.tsx';
import { ListTools } from './list-tools.tsx';
import { LotTable } from './lot-table.tsx';
import { NARROW, rowHeight } from './lot-table-frame.tsx';
import { PrintedList } from './printed-list.tsx';
import { SaveButton } from './save-button.tsx';
import { useChoice } from './use-choice.ts';
import { useKeptFocus } from './use-kept-focus.ts';
import { useListKeys } from './use-list-keys.ts';
import { useListPlace } from './use-list-place.ts';
import { usePaper } from './use-paper.ts';
import { useRowActs } from './use-row-acts.ts';
import { useRowPresses } from './use-row-presses.ts';
import { useShownLots } from './use-shown-lots.ts';
import './watchlist.css';

const loadBar = () => import('./hands/hands.ts').then((m) => m.ChoiceBar);
const loadPanel = () => import('./hands/hands.ts').then((m) => m.RowPanel);
const loadCompare = () => import('./hands/hands.ts').then((m) => m.CompareLots);

/** The lots that are watched, next close first, each with the price at which to stop. */
export function WatchlistScreen() {
  const { lots, complete, setup, setupKept } = useWorkspace();
  const now = useNow(1000);
  // Sorting every second would move rows under the finger for no gain; the minute is what changes who is shown.
  const minute = instant(Math.floor(now / MINUTE) * MINUTE);
  const [view, setView] = useState(listMemory.view);
  const [keysOpen, setKeysOpen] = useState(false);
  const searchBox = useRef<HTMLInputElement>(null);
  const table = useRef<HTMLDivElement>(null);
  const printing = usePrinting();
  const narrow = useMedia(NARROW);
  const { lots: shown, lines, standings, counts, settled } = useShownLots(view, minute);
  const wordsOf = useMemo(() => wordsUnder(setup, standings, lots), [setup, standings, lots]);
  const choice = useChoice(lines, lots);
  useEffect(() => {
    listMemory.shown = shown;
  }, [shown]);
  const changeView = (next: ListView) => {
    listMemory.view = next;
    listMemory.top = undefined;
    setView(next);
    if (table.current !== null) table.current.scrollTop = 0;
  };
  const [comparing, setComparing] = useState<readonly LotState[]>();
  useListPlace(table, lines, rowHeight(narrow), printing || comparing !== undefined);
  useKeptFocus(table, lines);
  // It may still have to name what was left out when nothing is chosen any more.
  const barLoaded = useRef(false);
  barLoaded.current ||= choice.lots.length > 0;
  const acts = useRowActs(lines, wordsOf, standings);
  const paper = usePaper();
  const onRow = { open: acts.press, offer: acts.offer, choose: choice.press };
  useRowPresses(table, onRow);
  useListKeys({
    table,
    searchBox,
    onKeySheet: () => setKeysOpen((open) => !open),
    onByVenue: () => changeView({ ...view, byVenue: !view.byVenue }),
    onChooseAll: choice.pressAll,
    onRow: { ...onRow, choose: (index) => choice.press(index, false) },
  });

  if (lots.length === 0 && complete) return <EmptyList setupKept={setupKept} />;
  if (comparing !== undefined && !printing) {
    const present = lots.filter(({ id }) => comparing.some((lot) => lot.id === id));
    const props = { lots: present, wordsOf, onBack: () => setComparing(undefined) };
    return <Lazy load={loadCompare} props={props} />;
  }
  const opened = acts.open && lots.find(({ id }) => id === acts.open?.lot);
  const panel = opened && acts.open && (
    <Lazy
      key={opened.id}
      load={loadPanel}
      props={{
        lot: opened,
        name: wordsOf(opened).name,
        act: acts.open.act,
        start: acts.open.start,
        works: standings,
        onClose: acts.close,
      }}
    />
  );
  return (
    <div class="watchlist">
      <h1 class="visually-hidden">Lots</h1>
      <ListTools
        view={view}
        onView={changeView}
        counts={counts}
        shown={shown.length}
        known={lots.length}
        complete={complete && settled}
        searchBox={searchBox}
        onKeySheet={() => setKeysOpen(true)}
      >
        <SaveButton lots={shown} works={standings} />
      </ListTools>
      {(choice.lots.length > 0 || barLoaded.current) && (
        <Lazy
          load={loadBar}
          props={{
            lots: choice.lots,
            hidden: choice.hidden,
            standings,
            onChoose: choice.only,
            onCompare: () => setComparing(choice.lots),
            onPrint: () => paper.printThese(choice.lots),
          }}
        />
      )}
      {printing ? (
        <PrintedList lots={paper.lots ?? shown} wordsOf={wordsOf} />
      ) : (
        <LotTable
          lines={lines}
          view={view}
          onView={changeView}
          wordsOf={wordsOf}
          now={now}
          table={table}
          choice={choice}
          open={panel && opened && { lot: opened.id, panel }}
        />
      )}
      {shown.length === 0 && <NoneShown known={lots} onAll={() => changeView({ ...FIRST_VIEW, show: 'all' })} />}
      {keysOpen && <KeySheet onClose={() => setKeysOpen(false)} />}
    </div>
  );
}

function NoneShown({ known, onAll }: { known: readonly LotState[]; onAll: () => void }) {
  return (
    <p class="watchlist-none">
      None of the {known.length.toLocaleString('en-US')} lots match.{' '}
      <button type="button" class="plain" onClick={onAll}>
        Show all
      </button>
    </p>
  );
}
