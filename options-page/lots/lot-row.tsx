import type { Instant } from '../../src/domain/time/instant.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import { COLUMNS } from './columns.tsx';

interface LotRowProps {
  readonly row: RowWords;
  /** Its place among all lines, from 0. */
  readonly index: number;
  /** Where it begins, in CSS pixels from the top of all rows. */
  readonly top: number;
  readonly height: number;
  readonly now: Instant;
  readonly chosen?: boolean;
}

/** One lot: a box to choose it, and a cell for each column. */
export function LotRow({ row, index, top, height, now, chosen = false }: LotRowProps) {
  return (
    <div
      class={chosen ? 'lot-row chosen' : 'lot-row'}
      role="row"
      tabIndex={-1}
      aria-rowindex={index + 2}
      data-row={index}
      style={{ transform: `translateY(${top}px)`, height: `${height}px` }}
    >
      <div class="lot-choose" role="cell">
        <input type="checkbox" data-press="choose" aria-label={`Choose ${row.name}`} checked={chosen} />
      </div>
      {COLUMNS.map(({ key, number, cell }) => (
        <div key={key} class={`lot-${key}${number ? ' number' : ''}`} role="cell">
          {cell(row, now)}
        </div>
      ))}
    </div>
  );
}
