import type { Instant } from '../../src/domain/time/instant.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';

const CLASS = { act: 'act', doubt: 'doubt', done: '', quiet: 'quiet' } as const;

export const isEnded = ({ ended }: RowWords, now: Instant): boolean => ended.at !== undefined && ended.at <= now;

/**
 * What there is to do, as a button that opens it in the row; and beside it what can be noted with one press. Presses are
 * heard by the table (`use-row-presses.ts`), because the first rows are drawn without any program.
 */
export function TodoCell({ row, now }: { row: RowWords; now: Instant }) {
  const ended = isEnded(row, now);
  const { words, as, offer } = row.todo;
  return (
    <>
      <button type="button" class={`lot-word small ${ended ? '' : CLASS[as]}`} data-press="open">
        {ended ? row.ended.words : words}
        <span class="visually-hidden">, {row.name}</span>
      </button>
      {!ended && offer !== undefined && (
        <button type="button" class="lot-offer small" data-press="offer">
          {offer}
          <span class="visually-hidden">, {row.name}</span>
        </button>
      )}
    </>
  );
}
