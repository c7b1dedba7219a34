import { useEffect, useState } from 'preact/hooks';
import { type Month, monthInWords, monthOf } from '../../../src/domain/books/month.ts';
import { toClose } from '../../../src/domain/books/post/post-months.ts';
import type { NotedClose } from '../../../src/journal/states/books-state.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

/** Closes a month, after saying what is still open in it; or opens the last one that was closed again. */
export function CloseForm({ month, close }: { month: Month; close?: NotedClose }) {
  const { store, undo, say } = useWorkspace();
  const { posted, folders, today } = useBooks();
  const book = useBook();
  const [by, setBy] = useState<string>();
  useEffect(() => {
    store.about().then(
      ({ author }) => setBy((before) => before ?? author),
      (error: unknown) => say(String(error)),
    );
  }, [store, say]);

  if (close !== undefined) {
    return (
      <p class="row no-print">
        <button
          type="button"
          onClick={async () => {
            const opened = await undo(close.entry);
            say(
              opened.ok ? `${monthInWords(month)} is open again.` : opened.message,
              opened.ok ? opened.value.entry : undefined,
            );
          }}
        >
          Reopen {monthInWords(month)}
        </button>
        <span class="quiet small">The journal keeps both the close and the reopening.</span>
      </p>
    );
  }
  const inIt = folders.filter(({ won, stage }) => won !== null && monthOf(won.date) <= month && stage !== 'undone');
  const without = inIt.filter(
    ({ won, costs }) => won !== null && monthOf(won.date) === month && !costs.some(({ cost }) => cost === 'hammer'),
  );
  const differing = inIt.filter(({ won, look }) => won !== null && monthOf(won.date) === month && look);
  const notOver = month >= monthOf(today);
  const closing = toClose(posted, month);
  return (
    <section class="panel stack no-print" aria-labelledby="close-month">
      <h2 id="close-month">Close {monthInWords(month)}</h2>
      {notOver && (
        <p class="note warning">
          This month is not over yet. Anything recorded in it after the close shows as a correction.
        </p>
      )}
      <FolderNames words="without an invoice" folders={without} />
      <FolderNames words="with an amount that differs" folders={differing} />
      <div class="fields">
        <TextInput label="Closed by" value={by} longest={80} required onCommit={setBy} />
      </div>
      <div class="row">
        <button
          type="button"
          class="main"
          disabled={by === undefined || by.trim() === ''}
          onClick={() =>
            book(
              { kind: 'month-closed', month, by: by?.trim() ?? '', transactions: closing },
              `${monthInWords(month)} is closed.`,
            )
          }
        >
          Close {monthInWords(month)}: lock {countWords(closing.length, 'entry', 'entries')}
        </button>
      </div>
    </section>
  );
}

/** More names than this would push the button out of sight. */
const MOST_OPEN = 12;

function FolderNames({ words, folders }: { words: string; folders: ReturnType<typeof useBooks>['folders'] }) {
  if (folders.length === 0) return null;
  return (
    <details class="note close-names" open={folders.length <= MOST_OPEN}>
      <summary>
        {countWords(folders.length, 'car', 'cars')} {words}
      </summary>
      <ul class="plain-list">
        {folders.map(({ lot, facts }) => (
          <li key={lot}>
            <a href={`#/books/${lot}`}>{folderName(facts)}</a>
          </li>
        ))}
      </ul>
    </details>
  );
}
