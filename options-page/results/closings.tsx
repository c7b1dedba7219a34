import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import type { LotAct } from '../../src/acts/act.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { RESULT_KEYS } from '../../src/domain/sale/read-result.ts';
import { ENDING_WORDS } from '../../src/domain/sale/result-words.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { Unkept } from '../../src/ui/ask/unkept.tsx';
import type { Pending } from '../../src/ui/ask/use-asked-act.ts';
import { useLotAct } from '../../src/ui/hooks/use-lot-act.ts';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { useStandingsNow } from '../../src/ui/hooks/use-standings.ts';
import { useVirtualRows } from '../../src/ui/tables/use-virtual-rows.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { previewAct } from '../../src/views/lots/do-lot-act.ts';
import { byClose, isOpenClosing } from '../../src/views/results/open-closings.ts';
import { ClosingRow } from './closing-row.tsx';
import { readDrafts, writeDrafts } from './result-drafts.ts';

const HEIGHT = 72;
const HEIGHT_NARROW = 128;

interface ClosingsProps {
  /** The present minute; rows do not come and go under the hands more often. */
  readonly minute: number;
  readonly complete: boolean;
}

interface Asked extends Pending {
  readonly lot: LotState;
}

/** The closings without a result, to be caught up on with the keyboard alone. */
export function Closings({ minute, complete }: ClosingsProps) {
  const { lots, setup } = useWorkspace();
  const standings = useStandingsNow();
  const act = useLotAct();
  const [asked, setAsked] = useState<Asked>();
  const narrow = useMedia('(max-width: 700px)');
  const scroller = useRef<HTMLDivElement>(null);
  const rows = useListed(lots, minute);
  const height = narrow ? HEIGHT_NARROW : HEIGHT;
  const { items, total } = useVirtualRows(scroller, rows.length, { height });
  const [drafts, setDrafts] = useState(readDrafts);

  const type = useCallback((id: string, text: string) => {
    setDrafts((before) => {
      const after = new Map(before);
      if (text === '') after.delete(id);
      else after.set(id, text);
      writeDrafts(after);
      return after;
    });
  }, []);
  const go = useCallback((index: number) => focusRow(scroller.current, index, height), [height]);

  const place = () => ({ setup, standings, now: instant(Date.now()) });
  const keep = async (lot: LotState, wanted: LotAct): Promise<string | null> => {
    const unkept = await act(lot, wanted);
    if (unkept?.as === 'ask') {
      setAsked({ lot, act: wanted, question: unkept.question });
      return '';
    }
    setAsked(undefined);
    return unkept === null ? null : unkept.message;
  };
  /** The answer is on its line: back to it while it is not settled, and on to the next one when it is. */
  const leave = ({ lot }: Asked, by: 0 | 1) => {
    setAsked(undefined);
    go(rows.findIndex(({ id }) => id === lot.id) + by);
  };

  if (!complete) return <p role="status">Reading your lots…</p>;
  if (rows.length === 0) return <NothingOpen />;
  const left = rows.reduce((count, lot) => count + (isOpenClosing(lot, minute) ? 1 : 0), 0);
  return (
    <>
      <p role="status">
        {left === 0 ? 'All have a result.' : `${left.toLocaleString('en-US')} to go.`}{' '}
        <span class="quiet no-print">Enter saves and moves on; ↑ and ↓ move; blank rows are skipped.</span>
      </p>
      <dl class="result-keys small">
        {RESULT_KEYS.map(({ key, ended, example }) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd> {ENDING_WORDS[ended]}
            </dt>
            <dd class="quiet">{example}</dd>
          </div>
        ))}
      </dl>
      {asked !== undefined && (
        <section class="panel" aria-label={lotTitle(asked.lot.facts)}>
          <p class="strong">{lotTitle(asked.lot.facts)}</p>
          <Unkept
            pending={asked}
            onLeave={() => leave(asked, 0)}
            onAct={async (answer) => {
              const sentence = await keep(asked.lot, answer);
              if (sentence === '') return;
              if (sentence === null) type(asked.lot.id, '');
              leave(asked, sentence === null ? 1 : 0);
            }}
          />
        </section>
      )}
      <div class="closing-scroll" ref={scroller}>
        <ul class="result-list" aria-label="Closings without a result" style={{ height: `${total}px` }}>
          {items.map(({ index, start }) => {
            const lot = rows[index];
            return (
              lot && (
                <ClosingRow
                  key={lot.id}
                  lot={lot}
                  index={index}
                  count={rows.length}
                  top={start}
                  height={height}
                  standing={standings.of(lot)}
                  draft={drafts.get(lot.id) ?? ''}
                  onType={type}
                  onGo={go}
                  keep={keep}
                  isPlain={(one, wanted) => previewAct(one, wanted, place()).as !== 'ask'}
                />
              )
            );
          })}
        </ul>
      </div>
    </>
  );
}

/** Rows that were listed stay until the screen is left, so that nothing jumps while one types; new ones come in below. */
function useListed(lots: readonly LotState[], minute: number): readonly LotState[] {
  const listed = useRef(new Map<string, number>());
  return useMemo(() => {
    const places = listed.current;
    for (const lot of lots.filter((one) => isOpenClosing(one, minute) && !places.has(one.id)).sort(byClose))
      places.set(lot.id, places.size);
    return lots.filter(({ id }) => places.has(id)).sort((a, b) => (places.get(a.id) ?? 0) - (places.get(b.id) ?? 0));
  }, [lots, minute]);
}

/** The row may lie out of sight, and so not exist yet: it is scrolled to first. */
function focusRow(scroller: HTMLElement | null, index: number, height: number): void {
  if (scroller === null) return;
  const box = () => scroller.querySelector<HTMLInputElement>(`input[data-row="${index}"]`);
  const top = index * height;
  if (top < scroller.scrollTop) scroller.scrollTop = top;
  else if (top + height > scroller.scrollTop + scroller.clientHeight)
    scroller.scrollTop = top + height - scroller.clientHeight;
  const there = box();
  if (there !== null) there.focus({ preventScroll: true });
  else requestAnimationFrame(() => requestAnimationFrame(() => box()?.focus({ preventScroll: true })));
}

function NothingOpen() {
  return (
    <div class="stack empty-list">
      <p>Every close has a result. When a lot closes, it is listed here until you enter how it ended.</p>
      <p>
        <a class="button" href="#/results">
          Review the results
        </a>
      </p>
    </div>
  );
}
