import { render } from 'preact';
import type { Instant } from '../src/domain/time/instant.ts';
import { markLotsShown } from '../src/ui/lots-shown.ts';
import type { RowWords } from '../src/ui/row-words.ts';
import { Frame } from './frame.tsx';
import { FIRST_VIEW } from './watchlist/first-view.ts';
import { ListTools } from './watchlist/list-tools.tsx';
import { LotRow } from './watchlist/lot-row.tsx';
import { LotTableFrame, NARROW, rowHeight } from './watchlist/lot-table-frame.tsx';
import './watchlist/watchlist.css';

/** What stands above the rows is at least this high, in CSS pixels; every row too many would only take time. */
const ABOVE_LIST = 200;
/** A tab that nobody looks at draws no frame to wait for. */
const PATIENCE_MS = 250;

/**
 * Draws the rows of the lots that are still open, as the list will draw them, and waits until they have been drawn. Does
 * nothing when there are none.
 */
export async function showFirstRows(rows: readonly RowWords[], page: HTMLElement): Promise<void> {
  const now = Date.now() as Instant;
  const open = rows.filter(({ close }) => close !== undefined && close.instant > now);
  if (open.length === 0) return;
  // In an element of its own: the program that comes later has its own Preact, which must not take this for its work.
  const place = document.createElement('div');
  place.id = 'first-rows';
  page.replaceChildren(place);
  render(<FirstRows rows={open} now={now} />, place);
  markLotsShown();
  await Promise.race([
    new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))),
    new Promise((resolve) => setTimeout(resolve, PATIENCE_MS)),
  ]);
}

function FirstRows({ rows, now }: { rows: readonly RowWords[]; now: Instant }) {
  const narrow = matchMedia(NARROW).matches;
  const inSight = Math.ceil((innerHeight - ABOVE_LIST) / rowHeight(narrow));
  return (
    <Frame screen="lots" clock={<div class="store-clock small" />}>
      <div class="watchlist" aria-busy="true">
        <h1 class="visually-hidden">Lots</h1>
        <ListTools
          view={FIRST_VIEW}
          onView={nothingYet}
          shown={0}
          known={0}
          complete={false}
          searchBox={{ current: null }}
          onKeySheet={nothingYet}
        >
          <button type="button" disabled>
            Save as CSV
          </button>
        </ListTools>
        <LotTableFrame narrow={narrow} count={rows.length} view={FIRST_VIEW} onView={nothingYet}>
          {rows.slice(0, inSight).map((row, index) => (
            <LotRow key={row.id} row={row} index={index} height={rowHeight(narrow)} now={now} />
          ))}
        </LotTableFrame>
      </div>
    </Frame>
  );
}

/** The program behind the buttons is on its way. */
const nothingYet = () => undefined;
