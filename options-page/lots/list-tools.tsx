import type { ComponentChildren, RefObject } from 'preact';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShowKey } from '../../src/views/lots/list-filter.ts';
import type { ListView } from '../../src/views/lots/list-order.ts';
import { COLUMNS, columnOf, PLANNED } from './columns.tsx';
import { ListShows } from './list-shows.tsx';
import './list-tools.css';

interface ListToolsProps {
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  readonly counts: Readonly<Record<ShowKey, number>> | null;
  readonly shown: number;
  readonly known: number;
  readonly complete: boolean;
  readonly searchBox: RefObject<HTMLInputElement | null>;
  readonly onKeySheet: () => void;
  /** What else can be done with the lots that are shown. */
  readonly children: ComponentChildren;
}

/** What is shown, in which order, and how many that makes. */
export function ListTools(props: ListToolsProps) {
  const { planned } = useWorkspace();
  const { view, onView, counts, shown, known, complete, searchBox, onKeySheet, children } = props;
  return (
    <div class="list-tools no-print">
      <ListShows show={view.show} onShow={(show) => onView({ ...view, show })} counts={counts} />
      <div class="row">
        <input
          ref={searchBox}
          type="search"
          class="list-search"
          aria-label="Search the lots"
          placeholder="Search: car, VIN, lot 427, venue"
          value={view.search}
          onInput={(event) => onView({ ...view, search: event.currentTarget.value })}
        />
        {complete && shown === 0 && view.search.trim() !== '' && (
          <a href={`#/books//${encodeURIComponent(view.search.trim())}`}>Look for it in the books</a>
        )}
        <label class="row list-sort">
          <span class="small strong">Order</span>
          <select
            value={view.sort}
            onChange={(event) => {
              const { largestFirst, key } = columnOf(event.currentTarget.value) ?? {};
              if (key !== undefined) onView({ ...view, sort: key, descending: largestFirst === true });
            }}
          >
            {(planned.size === 0 ? COLUMNS : [...COLUMNS, PLANNED]).map(({ key, label }) => (
              <option key={key} value={key}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          aria-pressed={view.descending}
          aria-label="Largest or latest first"
          title="Largest or latest first"
          onClick={() => onView({ ...view, descending: !view.descending })}
        >
          {view.descending ? '↓' : '↑'}
        </button>
        <button type="button" aria-pressed={view.byVenue} onClick={() => onView({ ...view, byVenue: !view.byVenue })}>
          By venue
        </button>
        <button type="button" class="plain" onClick={onKeySheet}>
          Keys
        </button>
        {children}
        <span class="quiet small list-count" role="status">
          {complete
            ? `${shown.toLocaleString('en-US')} of ${known.toLocaleString('en-US')} lots`
            : 'still working out lots…'}
        </span>
      </div>
    </div>
  );
}
