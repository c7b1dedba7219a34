import type { Instant } from '../../src/domain/time/instant.ts';
import { CloseLines } from '../../src/ui/close-lines.tsx';
import type { RowWords } from '../../src/views/lots/row-words.ts';

interface LotRowProps {
  readonly row: RowWords;
  readonly index: number;
  readonly height: number;
  readonly now: Instant;
}

/** One lot: when it closes, what it is, and the price at which to stop as the largest figure. */
export function LotRow({ row, index, height, now }: LotRowProps) {
  const { price, maxBid, headroom } = row;
  return (
    <div
      class="lot-row"
      role="row"
      tabIndex={-1}
      aria-rowindex={index + 2}
      style={{ transform: `translateY(${index * height}px)`, height: `${height}px` }}
    >
      <div class="lot-close" role="cell">
        <CloseLines look={row.close} now={now} />
      </div>
      <div class="lot-car" role="cell">
        <a href={`#/lot/${row.id}`} data-row={index} class="lot-name">
          {row.title}
        </a>
        <span class="quiet small lot-sub">{row.sub}</span>
      </div>
      <div class="lot-price number" role="cell">
        <span class="lot-label">now </span>
        {price ?? <span class="missing">no price</span>}
      </div>
      <div class="lot-max number" role="cell">
        <span class={MAX_BID_CLASS[maxBid.as]}>{maxBid.words}</span>
      </div>
      <div class="lot-headroom number" role="cell">
        {headroom && !headroom.past && <span class="lot-label">room </span>}
        {headroom && `${headroom.words}${headroom.past ? ' over max' : ''}`}
      </div>
      <div class="lot-todo" role="cell">
        <Todo row={row} now={now} />
      </div>
    </div>
  );
}

const MAX_BID_CLASS = { figure: 'lot-figure', strong: 'strong', missing: 'missing' } as const;
const TODO_CLASS = { act: 'act small', doubt: 'tag doubt', done: 'small', quiet: 'small quiet' } as const;

function Todo({ row: { todo, ended }, now }: Pick<LotRowProps, 'row' | 'now'>) {
  if (ended.at !== undefined && ended.at <= now) return <span class="tag">{ended.words}</span>;
  return <span class={TODO_CLASS[todo.as]}>{todo.words}</span>;
}
