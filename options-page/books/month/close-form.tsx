import { useEffect, useMemo, useState } from 'preact/hooks';
import { type Month, monthInWords, monthOf } from '../../../src/domain/books/month.ts';
import { accrualMonths } from '../../../src/domain/books/post/accrual.ts';
import { toClose } from '../../../src/domain/books/post/post-months.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { type ClosingGroup, closingOpen } from '../../../src/views/books/closing-open.ts';
import { postedBooks } from '../../../src/views/books/posted-books.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

/** Closes a month after saying what is missing from it. Where something is, or the month is not over, one press is not enough. */
export function CloseForm({ month }: { month: Month }) {
  const { store, setup, say } = useWorkspace();
  const { state, folders, apart, bookkeeping, lots, today } = useBooks();
  const book = useBook();
  const [by, setBy] = useState<string>();
  const [seen, setSeen] = useState(false);
  const [early, setEarly] = useState(false);
  useEffect(() => {
    store.about().then(
      ({ author }) => setBy((before) => before ?? author),
      (error: unknown) => say(String(error)),
    );
  }, [store, say]);
  const isOver = month < monthOf(today);
  const { closing, missing } = useMemo(
    () => ({
      closing: toClose(postedBooks({ folders, apart }, state, bookkeeping, month), month),
      missing: closingOpen(
        {
          folders,
          lots,
          setup,
          accruals: accrualMonths(state.closes, month),
          now: instant(Date.now()),
          bank: state.bank,
        },
        month,
      ),
    }),
    [folders, apart, state, bookkeeping, lots, setup, month],
  );
  if (month > monthOf(today)) return null;
  const open = missing.reduce((sum, { lines }) => sum + lines.length, 0);
  const isAsked = (open === 0 || seen) && (isOver || early);
  return (
    <section class="panel stack no-print" aria-labelledby="close-month">
      <h2 id="close-month">Close {monthInWords(month)}</h2>
      <p class="prose">
        Closing locks {countWords(closing.length, 'entry', 'entries')}. Whatever is recorded for this month afterwards
        shows as a correction in the next one.
      </p>
      {missing.map((group) => (
        <Missing key={group.title} group={group} />
      ))}
      {open === 0 && <p>Nothing is missing: every close has a result, and every car its bill.</p>}
      {!isOver && (
        <div class="note warning stack">
          <p>
            {monthInWords(month)} is not over. Cars won until its end would miss their accrual, and their bills would
            show as corrections.
          </p>
          <CheckInput label="Close it before it ends" value={early} onCommit={setEarly} />
        </div>
      )}
      {open > 0 && (
        <CheckInput
          label={`Close it with ${countWords(open, 'thing', 'things')} open`}
          value={seen}
          onCommit={setSeen}
        />
      )}
      <div class="fields">
        <TextInput label="Closed by" value={by} longest={80} required onCommit={setBy} />
      </div>
      <div class="row">
        <button
          type="button"
          class="main"
          disabled={!isAsked || by === undefined || by.trim() === ''}
          onClick={() =>
            book(
              { kind: 'month-closed', month, by: by?.trim() ?? '', transactions: closing },
              `${monthInWords(month)} is closed.`,
            )
          }
        >
          Close {monthInWords(month)}: lock {countWords(closing.length, 'entry', 'entries')}
        </button>
        {!isAsked && (
          <span class="quiet small">
            {isOver
              ? 'Check the box above first.'
              : 'Check what is asked above first, or wait until the month is over.'}
          </span>
        )}
      </div>
      <p class="quiet small prose">
        When a won car counts as yours, and what is accrued, your accountant decides. Freight and recon are not accrued.
      </p>
    </section>
  );
}

/** More names than this would push the button out of sight. */
const MOST_OPEN = 12;

function Missing({ group: { title, means, lines } }: { group: ClosingGroup }) {
  return (
    <details class="note close-names" open={lines.length <= MOST_OPEN}>
      <summary>
        {title}: {lines.length.toLocaleString('en-US')}
      </summary>
      <p class="small">{means}</p>
      <ul class="plain-list">
        {lines.map(({ key, what, more, hash }) => (
          <li key={key}>
            <a href={hash}>{what}</a> <span class="quiet small">{more}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
