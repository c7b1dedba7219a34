import { useState } from 'preact/hooks';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { NotedCost, NotedPayment } from '../../../src/journal/states/books-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { bookedTogether } from '../../../src/views/books/booked-together.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';
import { CorrectLine } from './correct-line.tsx';

const NAMED = 8;

interface BookedLineActsProps {
  readonly line: NotedCost | NotedPayment;
  /** What it is, in words. */
  readonly what: string;
}

/** What can be done about one recorded line: correct it, undo it alone, or undo all that was recorded with it. */
export function BookedLineActs({ line, what }: BookedLineActsProps) {
  const { undo, say } = useWorkspace();
  const { state, lots } = useBooks();
  const book = useBook();
  const [open, setOpen] = useState<'correct' | 'all'>();
  const together = bookedTogether(state, line.entry, (lot) => lots.find(({ id }) => id === lot)?.facts);
  const others = together.filter(({ key }) => key !== line.key);
  const named = `${what}, ${formatMoney(line.cents)}`;
  const undoAll = async () => {
    const taken = await undo(line.entry);
    const said = others.length === 0 ? 'Undone.' : `${countWords(together.length, 'line', 'lines')} undone.`;
    say(taken.ok ? said : taken.message, taken.ok ? taken.value.entry : undefined);
  };
  return (
    <span class="no-print">
      <button type="button" class="plain small" aria-label={`Correct ${named}`} onClick={() => setOpen('correct')}>
        Correct
      </button>{' '}
      <button
        type="button"
        class="plain small"
        aria-label={`Undo ${named}`}
        onClick={() =>
          others.length === 0
            ? undoAll()
            : book({ kind: 'line-corrected', lot: line.lot, line: line.key, to: null }, `${named}: undone.`)
        }
      >
        {others.length === 0 ? 'Undo' : 'Undo this line'}
      </button>
      {others.length > 0 && (
        <>
          {' '}
          <button
            type="button"
            class="plain small"
            aria-label={`Undo all ${together.length} lines recorded with ${named}`}
            aria-expanded={open === 'all'}
            onClick={() => setOpen(open === 'all' ? undefined : 'all')}
          >
            Undo all {together.length}
          </button>
        </>
      )}
      {open === 'correct' && <CorrectLine line={line} what={what} onDone={() => setOpen(undefined)} />}
      {open === 'all' && (
        <span class="note block" role="alert">
          This also undoes{' '}
          {others
            .slice(0, NAMED)
            .map(({ words }) => words)
            .join('; ')}
          {others.length > NAMED && ` and ${countWords(others.length - NAMED, 'more line', 'more lines')}`}. It can be
          brought back under Invoices.{' '}
          <button type="button" onClick={undoAll}>
            Undo all {together.length} lines
          </button>{' '}
          <button type="button" class="plain" onClick={() => setOpen(undefined)}>
            Cancel
          </button>
        </span>
      )}
    </span>
  );
}
