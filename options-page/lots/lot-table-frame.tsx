import type { ComponentChildren, RefObject } from 'preact';
import type { ListView } from '../../src/views/lots/list-order.ts';
import { wordsHash } from '../../src/views/words/words-hash.ts';
import { COLUMNS, type Column } from './columns.tsx';

export const NARROW = '(max-width: 900px)';
/** In CSS pixels: a row has two lines, a card on a narrow screen has several. */
export const rowHeight = (narrow: boolean): number => (narrow ? 136 : 44);

interface LotTableFrameProps {
  readonly narrow: boolean;
  /** How many lines there are, those out of sight too. */
  readonly count: number;
  /** How high all of them are together, in CSS pixels; left out while there are none. */
  readonly height?: number;
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  /** Whether all lots that are shown are chosen. */
  readonly allChosen?: boolean;
  readonly onChooseAll?: () => void;
  readonly table?: RefObject<HTMLDivElement | null>;
  /** The rows in sight. */
  readonly children: ComponentChildren;
}

/** The heads of the columns, and a scroller as high as all rows together. */
export function LotTableFrame(props: LotTableFrameProps) {
  const { narrow, count, height, view, onView, allChosen = false, onChooseAll, table, children } = props;
  return (
    <div class={narrow ? 'lot-table narrow' : 'lot-table'} role="table" aria-rowcount={count + 1} aria-label="Lots">
      <div class={narrow ? 'visually-hidden' : ''} role="rowgroup">
        <div class="lot-head" role="row" tabIndex={-1} aria-rowindex={1}>
          <span role="columnheader" tabIndex={-1}>
            {narrow ? (
              'Choose'
            ) : (
              <input
                type="checkbox"
                aria-label="Choose all lots that are shown"
                checked={allChosen}
                onChange={onChooseAll}
              />
            )}
          </span>
          {COLUMNS.map((column) => (
            <ColumnHead key={column.key} column={column} narrow={narrow} view={view} onView={onView} />
          ))}
        </div>
      </div>
      <div class="lot-scroll" ref={table} role="rowgroup">
        <div role="presentation" class="lot-all" style={height === undefined ? undefined : { height: `${height}px` }}>
          {children}
        </div>
      </div>
    </div>
  );
}

interface ColumnHeadProps extends Pick<LotTableFrameProps, 'narrow' | 'view' | 'onView'> {
  readonly column: Column;
}

function ColumnHead({ column: { key, label, number, term, largestFirst }, narrow, view, onView }: ColumnHeadProps) {
  const sorted = key === view.sort;
  const descending = sorted ? !view.descending : largestFirst === true;
  return (
    <span
      role="columnheader"
      tabIndex={-1}
      class={number ? 'number' : ''}
      aria-sort={!sorted ? undefined : view.descending ? 'descending' : 'ascending'}
    >
      {narrow ? (
        label
      ) : (
        <button type="button" class="plain" onClick={() => onView({ ...view, sort: key, descending })}>
          {label}
          {sorted && <span aria-hidden="true">{view.descending ? ' ↓' : ' ↑'}</span>}
        </button>
      )}
      {term !== undefined && !narrow && (
        <a class="lot-term" href={wordsHash(term)} aria-label={`What “${label}” means`}>
          ?
        </a>
      )}
    </span>
  );
}
