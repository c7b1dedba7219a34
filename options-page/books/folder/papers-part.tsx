import { PAPERS } from '../../../src/domain/books/booking.ts';
import type { PurchaseFolder } from '../../../src/domain/books/folder/folder.ts';
import { PAPER_WORDS } from '../../../src/domain/books/folder/missing-papers.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';
import { useBooks } from '../use-books.ts';

/** What is in the folder, and what is not there yet. */
export function PapersPart({ folder }: { folder: PurchaseFolder }) {
  const { today } = useBooks();
  const book = useBook();
  return (
    <section class="stack" aria-labelledby="folder-papers">
      <h2 id="folder-papers">Papers</h2>
      <p>
        {folder.missing.length === 0 ? (
          'Nothing is missing.'
        ) : (
          <>
            <strong>Missing:</strong> {folder.missing.join(', ')}.
          </>
        )}
      </p>
      <div class="row papers">
        {PAPERS.map((paper) => {
          const note = folder.papers.findLast((each) => each.paper === paper);
          return (
            <span key={paper} class="row">
              <CheckInput
                label={
                  note?.date === undefined ? PAPER_WORDS[paper] : `${PAPER_WORDS[paper]}, in ${dateInWords(note.date)}`
                }
                value={note?.date !== undefined}
                onCommit={(there) =>
                  book(
                    { kind: 'paper-noted', lot: folder.lot, paper, ...(there && { date: today }) },
                    `${PAPER_WORDS[paper]}: ${there ? 'received' : 'not received'}.`,
                  )
                }
              />
            </span>
          );
        })}
      </div>
    </section>
  );
}
