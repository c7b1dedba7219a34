import { useRef } from 'preact/hooks';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { sayEnd } from '../../src/domain/sale/result-words.ts';
import { sayDate } from '../../src/domain/time/say-time.ts';
import { useMedia } from '../../src/ui/hooks/use-media.ts';
import { useVirtualRows } from '../../src/ui/tables/use-virtual-rows.ts';
import type { ResultRow } from '../../src/views/results/result-row.ts';
import { sayReview } from '../../src/views/results/review-words.ts';

const HEIGHT = 56;
const HEIGHT_NARROW = 84;

/** The results one below the other; only those in sight exist, however many there are. */
export function ResultList({ rows }: { rows: readonly ResultRow[] }) {
  const scroller = useRef<HTMLDivElement>(null);
  const height = useMedia('(max-width: 700px)') ? HEIGHT_NARROW : HEIGHT;
  const { items, total } = useVirtualRows(scroller, rows.length, { height });
  if (rows.length === 0) return null;
  return (
    <div class="result-scroll" ref={scroller}>
      <ul
        class="result-list"
        aria-label="Results"
        style={{ height: `${total}px` }}
        onKeyDown={(event) => {
          const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
          if (step === 0) return;
          event.preventDefault();
          const at = Number((event.target as HTMLElement).dataset.row);
          const next = event.currentTarget.querySelector<HTMLElement>(`[data-row="${at + step}"]`);
          next?.focus({ preventScroll: true });
          next?.closest('li')?.scrollIntoView({ block: 'nearest' });
        }}
      >
        {items.map(({ index, start }) => {
          const row = rows[index];
          return (
            row && <Row key={row.lot.id} row={row} index={index} count={rows.length} top={start} height={height} />
          );
        })}
      </ul>
    </div>
  );
}

interface RowProps {
  readonly row: ResultRow;
  readonly index: number;
  readonly count: number;
  readonly top: number;
  readonly height: number;
}

function Row({ row, index, count, top, height }: RowProps) {
  const { lot, title, venue, date, result, maxBid } = row;
  const { facts, sale } = lot;
  const by = sale?.result?.by;
  return (
    <li
      class="result-row"
      style={{ transform: `translateY(${top}px)`, height: `${height}px` }}
      aria-posinset={index + 1}
      aria-setsize={count}
    >
      <span class="result-date small">{sayDate(date)}</span>
      <span class="result-cell">
        <a class="result-name" href={`#/${lot.dropped ? 'history' : 'lot'}/${lot.id}`} data-row={index}>
          {title}
        </a>
        <span class="quiet small">
          {[venue, facts.lotNumber && `lot ${facts.lotNumber}`, facts.vin && `…${facts.vin.slice(-6)}`]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </span>
      <span class="result-words strong">
        {sayEnd(result, row.canceled)}
        {by && <span class="quiet small"> {by === 'live' ? 'live' : 'by proxy'}</span>}
      </span>
      <span class="result-max number small">
        {maxBid === undefined ? '' : maxBid === null ? 'not worth bidding' : `max ${formatMoney(maxBid)}`}
      </span>
      <span class={row.review.wouldHavePaid ? 'result-said act small' : 'result-said small'}>{sayReview(row)}</span>
    </li>
  );
}
