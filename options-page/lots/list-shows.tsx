import type { ShowKey } from '../../src/views/lots/list-filter.ts';

const SHOWS: readonly { readonly key: ShowKey; readonly label: string }[] = [
  { key: 'open', label: 'Still open' },
  { key: 'unplaced', label: 'No proxy yet' },
  { key: 'outbid', label: 'Outbid' },
  { key: 'over-max', label: 'Over max' },
  { key: 'no-venue', label: 'Venue not set' },
  { key: 'no-retail', label: 'Retail missing' },
  { key: 'placed', label: 'Placed' },
  { key: 'no-room', label: 'No room' },
  { key: 'day', label: 'Next 24 hours' },
  { key: 'unfinished', label: 'Something missing' },
  { key: 'closed', label: 'Closed' },
  { key: 'all', label: 'All' },
];

interface ListShowsProps {
  readonly show: ShowKey;
  readonly onShow: (show: ShowKey) => void;
  /** How many lots each would show; null while that is not known. */
  readonly counts: Readonly<Record<ShowKey, number>> | null;
}

/** What the list is cut down to. One stop of the keyboard: the arrows and first letters choose (WAI-ARIA, radio group). */
export function ListShows({ show, onShow, counts }: ListShowsProps) {
  const onKey = (event: KeyboardEvent) => {
    const next = nextShow(event.key, show);
    if (next === null || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    event.preventDefault();
    event.stopPropagation();
    onShow(next);
    const group = event.currentTarget;
    if (group instanceof HTMLElement) group.querySelector<HTMLElement>(`[data-show="${next}"]`)?.focus();
  };
  return (
    <div class="list-shows" role="radiogroup" aria-label="Show" onKeyDown={onKey}>
      {SHOWS.map(({ key, label }) => (
        <button
          key={key}
          type="button"
          role="radio"
          data-show={key}
          aria-checked={show === key ? 'true' : 'false'}
          tabIndex={show === key ? 0 : -1}
          onClick={() => onShow(key)}
        >
          {label} {counts !== null && <span class="list-shows-count">{counts[key].toLocaleString('en-US')}</span>}
        </button>
      ))}
    </div>
  );
}

/** What a key chooses from there; null when it chooses nothing. */
function nextShow(key: string, from: ShowKey): ShowKey | null {
  const at = SHOWS.findIndex((one) => one.key === from);
  const after = [...SHOWS.slice(at + 1), ...SHOWS.slice(0, at)];
  if (key === 'ArrowRight' || key === 'ArrowDown') return after[0]?.key ?? null;
  if (key === 'ArrowLeft' || key === 'ArrowUp') return after.at(-1)?.key ?? null;
  if (key.length !== 1) return null;
  return after.find(({ label }) => label.toLowerCase().startsWith(key.toLowerCase()))?.key ?? null;
}
