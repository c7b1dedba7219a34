import type { ComponentChildren, RefObject } from 'preact';
import type { ListView, SortKey } from '../../src/views/lots/list-order.ts';
import type { TermId } from '../../src/views/words/glossary.ts';
import { wordsHash } from '../../src/views/words/words-hash.ts';
import { startsDescending } from './list-tools.tsx';

export const NARROW = '(max-width: 760px)';
/** In CSS pixels: a row has one line, a card on a narrow screen has several. */
export const rowHeight = (narrow: boolean): number => (narrow ? 142 : 72);

const COLUMNS: readonly { key: SortKey | null; label: string; number?: boolean; term?: TermId }[] = [
  { key: 'close', label: 'Closes (store time)' },
  { key: 'car', label: 'Car' },
  { key: 'price', label: 'Price now', number: true, term: 'price-now' },
  { key: 'max-bid', label: 'Max bid', number: true, term: 'max-bid' },
  { key: 'headroom', label: 'Headroom', number: true, term: 'headroom' },
  { key: 'todo', label: 'To do' },
];

interface LotTableFrameProps {
  readonly narrow: boolean;
  /** How many rows there are, those out of sight too. */
  readonly count: number;
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  readonly table?: RefObject<HTMLDivElement | null>;
  /** The rows in sight. */
  readonly children: ComponentChildren;
}

/** The heads of the columns, and a scroller as high as all rows together. */
export function LotTableFrame({ narrow, count, view, onView, table, children }: LotTableFrameProps) {
  return (
    <div class={narrow ? 'lot-table narrow' : 'lot-table'} role="table" aria-rowcount={count + 1} aria-label="Lots">
      <div class={narrow ? 'visually-hidden' : ''} role="rowgroup">
        <div class="lot-head" role="row" tabIndex={-1} aria-rowindex={1}>
          {COLUMNS.map(({ key, label, number, term }) => (
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
              {term !== undefined && !narrow && (
                <a class="lot-term" href={wordsHash(term)} aria-label={`What “${label}” means`}>
                  ?
                </a>
              )}
            </span>
          ))}
        </div>
      </div>
      <div class="lot-scroll" ref={table} role="rowgroup">
        <div
          role="presentation"
          class="lot-all"
          style={count === 0 ? undefined : { height: `${count * rowHeight(narrow)}px` }}
        >
          {children}
        </div>
      </div>
    </div>
  );
}
