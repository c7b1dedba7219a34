import { useState } from 'preact/hooks';
import { monthInWords } from '../../../src/domain/books/month.ts';
import type { NotedClose } from '../../../src/journal/states/books-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBooks } from '../use-books.ts';

/** Opens the last month that was closed again, after saying what that does. */
export function ReopenForm({ close }: { close: NotedClose }) {
  const { undo, say } = useWorkspace();
  const { posted } = useBooks();
  const [asked, setAsked] = useState(false);
  const name = monthInWords(close.month);
  // Corrections of months before it stay where they are: those months stay closed.
  const own = new Set(close.transactions.map(({ date }) => date.slice(0, 7)));
  const moving = posted.transactions.filter(
    ({ corrects, date }) => corrects !== undefined && own.has(corrects) && date.slice(0, 7) > close.month,
  ).length;
  if (!asked)
    return (
      <p class="row no-print">
        <button type="button" onClick={() => setAsked(true)}>
          Reopen {name}…
        </button>
        <span class="quiet small">Says first what it does.</span>
      </p>
    );
  const reopen = async () => {
    const opened = await undo(close.entry);
    say(opened.ok ? `${name} is open again.` : opened.message, opened.ok ? opened.value.entry : undefined);
  };
  return (
    <section class="panel stack no-print" aria-labelledby="reopen-month">
      <h2 id="reopen-month">Reopen {name}?</h2>
      <ul class="plain-list">
        <li>{countWords(close.transactions.length, 'entry is', 'entries are')} no longer locked and may change.</li>
        <li>
          {moving === 0
            ? 'No correction was recorded after the close.'
            : `${countWords(moving, 'correction goes', 'corrections go')} back from later months to the day of the bill.`}
        </li>
        <li>Files and prints that you gave away may no longer match. Tell your accountant.</li>
        <li>The journal keeps both the close by {close.by} and the reopening.</li>
      </ul>
      <p class="row">
        <button type="button" class="main" onClick={reopen}>
          Reopen it
        </button>
        <button type="button" onClick={() => setAsked(false)}>
          Keep it closed
        </button>
      </p>
    </section>
  );
}
