import type { RefObject } from 'preact';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { useVirtualRows } from '../../src/ui/tables/use-virtual-rows.ts';
import type { ListView } from '../../src/views/lots/list-order.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import { LotRow } from './lot-row.tsx';
import { LotTableFrame, NARROW, rowHeight } from './lot-table-frame.tsx';

interface LotTableProps {
  readonly lots: readonly LotState[];
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  readonly wordsOf: (lot: LotState) => RowWords;
  readonly now: Instant;
  readonly table: RefObject<HTMLDivElement | null>;
}

/** Any number of rows, of which only those in sight exist. */
export function LotTable({ lots, view, onView, wordsOf, now, table }: LotTableProps) {
  const narrow = useMedia(NARROW);
  const height = rowHeight(narrow);
  const { items } = useVirtualRows(table, lots.length, height);
  return (
    <LotTableFrame narrow={narrow} count={lots.length} view={view} onView={onView} table={table}>
      {items.map(({ index }) => {
        const lot = lots[index];
        return lot && <LotRow key={lot.id} row={wordsOf(lot)} index={index} height={height} now={now} />;
      })}
    </LotTableFrame>
  );
}
