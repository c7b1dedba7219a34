import { LotsApartNote } from '../../src/ui/lots-apart-note.tsx';
import { openBankLines } from '../../src/views/books/bank-lines.ts';
import type { FolderWords } from '../../src/views/books/folder-words.ts';
import { BankPart } from './bank/bank-part.tsx';
import { BooksNav } from './books-nav.tsx';
import { BooksOpening } from './books-opening.tsx';
import { FolderScreen } from './folder/folder-screen.tsx';
import { FolderList } from './folder-list.tsx';
import { InvoicesPart } from './invoices/invoices-part.tsx';
import { MondayPart } from './monday/monday-part.tsx';
import { MonthPart } from './month/month-part.tsx';
import { PayablesPart } from './payables/payables-part.tsx';
import { ReviewPart } from './review/review-part.tsx';
import { SharePart } from './share/share-part.tsx';
import { SoldPart } from './sold/sold-part.tsx';
import { BooksContext, useReadBooks } from './use-books.ts';
import { useFirstFolders } from './use-first-folders.ts';
import './books.css';

interface BooksScreenProps {
  /** What follows `#/books/`: a part, the id of a lot, or nothing. */
  readonly part: string;
  /** What follows that: a month, a vendor, or words to look for. */
  readonly more: string;
}

/** What the bookkeeper opens on Monday: purchase folders, invoices, the review, the month. */
export function BooksScreen({ part, more, begun = [] }: BooksScreenProps & { begun?: readonly FolderWords[] }) {
  const books = useReadBooks();
  const first = useFirstFolders(begun);
  const unmatched = books === null ? 0 : openBankLines(books.state.bank);
  return (
    <div class="stack loose books">
      <BooksNav part={part} bank={unmatched > 0 && ` (${unmatched.toLocaleString('en-US')} unmatched)`} />
      {books === null ? (
        <BooksOpening part={part} first={first} />
      ) : (
        <BooksContext.Provider value={books}>
          <LotsApartNote lots={books.apart} />
          <Part key={part} part={part} more={more} />
        </BooksContext.Provider>
      )}
    </div>
  );
}

function Part({ part, more }: BooksScreenProps) {
  switch (part) {
    case '':
      return <FolderList key={more} wanted={more} />;
    case 'monday':
      return <MondayPart />;
    case 'payables':
      return <PayablesPart key={more} wanted={more} />;
    case 'bank':
      return <BankPart />;
    case 'share':
      return <SharePart />;
    case 'sold':
      return <SoldPart />;
    case 'month':
      return <MonthPart wanted={more} />;
    case 'review':
      return <ReviewPart />;
    case 'invoices':
      return <InvoicesPart />;
    default:
      return <FolderScreen id={part} />;
  }
}
