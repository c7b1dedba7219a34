import type { RefObject } from 'preact';
import type { Contradiction } from '../../src/domain/claims/contradictions.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LotState } from '../../src/journal/lot-state.ts';
import type { Standing } from '../../src/ui/standing.ts';
import { useMedia } from '../../src/ui/use-media.ts';
import { useVirtualRows } from '../../src/ui/use-virtual-rows.ts';
import type { ListView, SortKey } from './list-order.ts';
import { startsDescending } from './list-tools.tsx';
import { LotRow } from './lot-row.tsx';

const ROW_HEIGHT = 72;
const CARD_HEIGHT = 142;

const COLUMNS: readonly { key: SortKey | null; label: string; number?: boolean }[] = [
  { key: 'close', label: 'Closes (store time)' },
  { key: 'car', label: 'Car' },
  { key: 'price', label: 'Price now', number: true },
  { key: 'max-bid', label: 'Max bid', number: true },
  { key: 'headroom', label: 'Headroom', number: true },
  { key: null, label: 'To do' },
];

interface LotTableProps {
  readonly lots: readonly LotState[];
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  readonly standingOf: (lot: LotState) => Standing;
  /** What does not fit together about a lot. */
  readonly doubtsOf: (lot: LotState) => readonly Contradiction[];
  readonly now: Instant;
  readonly table: RefObject<HTMLDivElement | null>;
}

/** Any number of rows, of which only those in sight exist. */
export function LotTable({ lots, view, onView, standingOf, doubtsOf, now, table }: LotTableProps) {
  const narrow = useMedia('(max-width: 760px)');
  const height = narrow ? CARD_HEIGHT : ROW_HEIGHT;
  const { items, total } = useVirtualRows(table, lots.length, height);
  return (
    <div
      class={narrow ? 'lot-table narrow' : 'lot-table'}
      role="table"
      aria-rowcount={lots.length + 1}
      aria-label="Lots"
    >
      <div class={narrow ? 'visually-hidden' : ''} role="rowgroup">
        <div class="lot-head" role="row" tabIndex={-1} aria-rowindex={1}>
          {COLUMNS.map(({ key, label, number }) => (
            <span
              key={label}
              role="columnheader"
              tabIndex={-1}
              class={number ? 'number' : ''}
              aria-sort={key !== view.sort ? undefined : view.descending ? 'descending' : 'ascending'}
            >
              {key === null || narrow ? (
                label
              ) : (
                <button
                  type="button"
                  class="plain"
                  onClick={() =>
                    onView({
                      ...view,
                      sort: key,
                      descending: key === view.sort ? !view.descending : startsDescending(key),
                    })
                  }
                >
                  {label}
                  {key === view.sort && <span aria-hidden="true">{view.descending ? ' ↓' : ' ↑'}</span>}
                </button>
              )}
            </span>
          ))}
        </div>
      </div>
      <div class="lot-scroll" ref={table} role="rowgroup">
        <div role="presentation" style={{ height: `${total}px`, position: 'relative' }}>
          {items.map((item) => {
            const lot = lots[item.index];
            if (lot === undefined) return null;
            return (
              <LotRow
                key={lot.id}
                lot={lot}
                index={item.index}
                top={item.start}
                height={height}
                standing={standingOf(lot)}
                doubts={doubtsOf(lot)}
                now={now}
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}
