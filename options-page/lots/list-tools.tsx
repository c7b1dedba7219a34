import type { ComponentChildren, RefObject } from 'preact';
import type { ListView, ShowKey, SortKey } from '../../src/views/lots/list-order.ts';

const SHOWS: readonly { key: ShowKey; label: string }[] = [
  { key: 'open', label: 'Still open' },
  { key: 'day', label: 'Next 24 hours' },
  { key: 'unplaced', label: 'No proxy yet' },
  { key: 'outbid', label: 'Outbid' },
  { key: 'over-max', label: 'Over max' },
  { key: 'unfinished', label: 'Something missing' },
  { key: 'closed', label: 'Closed' },
  { key: 'all', label: 'All' },
];

const SORTS: readonly { key: SortKey; label: string }[] = [
  { key: 'close', label: 'Close' },
  { key: 'todo', label: 'To do' },
  { key: 'headroom', label: 'Headroom' },
  { key: 'max-bid', label: 'Max bid' },
  { key: 'price', label: 'Price now' },
  { key: 'car', label: 'Car' },
];

interface ListToolsProps {
  readonly view: ListView;
  readonly onView: (view: ListView) => void;
  readonly shown: number;
  readonly known: number;
  readonly complete: boolean;
  readonly searchBox: RefObject<HTMLInputElement | null>;
  readonly onKeySheet: () => void;
  /** What else can be done with the lots that are shown. */
  readonly children: ComponentChildren;
}

/** What is shown, in which order, and how many that makes. */
export function ListTools({ view, onView, shown, known, complete, searchBox, onKeySheet, children }: ListToolsProps) {
  return (
    <div class="list-tools no-print">
      <fieldset class="row">
        <legend class="visually-hidden">Show</legend>
        {SHOWS.map(({ key, label }) => (
          <button
            key={key}
            type="button"
            aria-pressed={view.show === key}
            onClick={() => onView({ ...view, show: key })}
          >
            {label}
          </button>
        ))}
      </fieldset>
      <div class="row">
        <input
          ref={searchBox}
          type="search"
          class="list-search"
          aria-label="Search the lots"
          placeholder="Search: car, VIN, lot, venue"
          value={view.search}
          onInput={(event) => onView({ ...view, search: event.currentTarget.value })}
        />
        <label class="row list-sort">
          <span class="small strong">Order</span>
          <select
            value={view.sort}
            onChange={(event) => {
              const chosen = SORTS.find(({ key }) => key === event.currentTarget.value);
              if (chosen) onView({ ...view, sort: chosen.key, descending: startsDescending(chosen.key) });
            }}
          >
            {SORTS.map(({ key, label }) => (
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

/** Money is looked at from the top, time and names from the start. */
export const startsDescending = (key: SortKey) => key === 'headroom' || key === 'max-bid' || key === 'price';
