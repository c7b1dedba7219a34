import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import type { BankView } from '../../../src/views/books/bank-of.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

const MOST_ROWS = 200;

/** What is settled, each with its way back: matches, lines left out, and the statements themselves. */
export function BankSettled({ view }: { readonly view: BankView }) {
  const { state } = useBooks();
  const { undo, say } = useWorkspace();
  const book = useBook();
  const takeBack = async (entry: EntryId) => {
    const taken = await undo(entry);
    say(taken.ok ? 'Undone.' : taken.message, taken.ok ? taken.value.entry : undefined);
  };
  const latest = view.matched.toReversed().slice(0, MOST_ROWS);
  return (
    <>
      <details class="panel">
        <summary>Matched: {view.matched.length.toLocaleString('en-US')}</summary>
        <ScrollX label="Matched">
          <Ledger
            rows={latest}
            rowKey={({ match }) => match.lines.join(' ')}
            columns={[
              {
                label: 'In the bank',
                heads: true,
                cell: ({ lines }) => lines.map(({ text, date }) => `${text}, ${dateInWords(date)}`).join('; '),
              },
              {
                label: 'Recorded',
                cell: ({ moves }) =>
                  moves
                    .map(({ payee, number, date }) => [payee, number, dateInWords(date)].filter(Boolean).join(', '))
                    .join('; '),
              },
              {
                label: 'Apart by',
                number: true,
                cell: ({ difference }) => (difference === 0 ? '' : formatMoney(difference, { sign: 'always' })),
              },
              {
                label: 'Undo',
                quietHead: true,
                class: 'no-print',
                cell: ({ match, lines }) => (
                  <button
                    type="button"
                    class="plain small"
                    aria-label={`Undo the match of ${lines[0]?.text}`}
                    onClick={() => book({ kind: 'bank-parted', lines: [...match.lines] }, 'No longer matched.')}
                  >
                    Undo
                  </button>
                ),
              },
            ]}
          />
        </ScrollX>
      </details>
      {view.leftOut.length > 0 && (
        <details class="panel">
          <summary>Left out: {view.leftOut.length.toLocaleString('en-US')}</summary>
          <ul class="plain-list">
            {view.leftOut.slice(0, MOST_ROWS).map(({ line, note }) => (
              <li key={line.key}>
                {line.text}, {dateInWords(line.date)}, {formatMoney(line.cents)}: {note.why}{' '}
                <button type="button" class="plain small" onClick={() => takeBack(note.entry)}>
                  Undo
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <details class="panel">
        <summary>Statements: {state.bank.statements.length}</summary>
        <ul class="plain-list">
          {state.bank.statements.toReversed().map((one) => (
            <li key={one.entry}>
              {one.account}, {dateInWords(one.from)} to {dateInWords(one.to)}, {one.lines} lines
              {one.closing !== undefined && `, closing balance ${formatMoney(one.closing)}`}
              {one.file !== undefined && `, ${one.file}`}{' '}
              <button type="button" class="plain small" onClick={() => takeBack(one.entry)}>
                Undo
              </button>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
