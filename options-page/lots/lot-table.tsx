import type { ComponentChildren, RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { LotId } from '../../src/domain/lot/lot.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { useVirtualRows } from '../../src/ui/tables/use-virtual-rows.ts';
import { isLot, type ListLine } from '../../src/views/lots/list-lines.ts';
import type { ListView } from '../../src/views/lots/list-order.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import { setTracks } from './columns.tsx';
import { LotRow } from './lot-row.tsx';
import { LotTableFrame, NARROW, rowHeight } from './lot-table-frame.tsx';
import { VenueRow } from './venue-row.tsx';
import './lot-table.css';

interface LotTableProps {
  readonly lines: readonly ListLine[];
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  readonly wordsOf: (lot: LotState) => RowWords;
  readonly now: Instant;
  readonly table: RefObject<HTMLDivElement | null>;
  readonly choice: {
    readonly has: (line: ListLine) => boolean;
    readonly allShown: boolean;
    readonly pressAll: () => void;
  };
  /** What is open below a lot's row. */
  readonly open?: { readonly lot: LotId; readonly panel: ComponentChildren } | undefined;
}

/** Any number of rows, of which only those in sight exist. */
export function LotTable({ lines, view, onView, wordsOf, now, table, choice, open }: LotTableProps) {
  const narrow = useMedia(NARROW);
  const height = rowHeight(narrow);
  useLayoutEffect(setTracks, []);
  const [panelHeight, setPanelHeight] = useState(0);
  const openAt = open === undefined ? -1 : lines.findIndex((line) => isLot(line) && line.id === open.lot);
  const { items, total } = useVirtualRows(table, lines.length, {
    height,
    open: openAt === -1 ? undefined : { index: openAt, height: panelHeight },
  });
  return (
    <LotTableFrame
      narrow={narrow}
      count={lines.length}
      {...(lines.length > 0 && { height: total })}
      view={view}
      onView={onView}
      allChosen={choice.allShown}
      onChooseAll={choice.pressAll}
      table={table}
    >
      {items.map(({ index, start }) => {
        const line = lines[index];
        if (line === undefined) return null;
        const place = { index, top: start, height, chosen: choice.has(line) };
        if (!isLot(line)) return <VenueRow key={`venue-${line.venue}`} line={line} {...place} />;
        return <LotRow key={line.id} row={wordsOf(line)} now={now} {...place} />;
      })}
      {open !== undefined && openAt !== -1 && (
        <OpenPanel top={topOf(openAt, height)} onHeight={setPanelHeight}>
          {open.panel}
        </OpenPanel>
      )}
    </LotTableFrame>
  );
}

const topOf = (index: number, height: number) => (index + 1) * height;

interface OpenPanelProps {
  readonly top: number;
  readonly onHeight: (height: number) => void;
  readonly children: ComponentChildren;
}

/** What is open below a row; it says how high it is, so that the rows after it make room. */
function OpenPanel({ top, onHeight, children }: OpenPanelProps) {
  const panel = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = panel.current;
    if (element === null) return;
    const measure = () => onHeight(element.offsetHeight);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => {
      observer.disconnect();
      onHeight(0);
    };
  }, [onHeight]);
  return (
    <div class="lot-panel" role="row" tabIndex={-1} ref={panel} style={{ transform: `translateY(${top}px)` }}>
      <div role="cell">{children}</div>
    </div>
  );
}
