import type { Bookkeeping } from '../../domain/accounts/accounts.ts';
import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import { lotTransactions } from '../../domain/books/post/lot-transactions.ts';
import { type PostedBooks, postMonths } from '../../domain/books/post/post-months.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { folderName } from './folder-name.ts';

/** All folders as double entry, each transaction in the month in which it counts. */
export function postedBooks(
  folders: readonly PurchaseFolder[],
  state: Pick<BooksState, 'closes'>,
  { treatment }: Pick<Bookkeeping, 'treatment'>,
): PostedBooks {
  const current = folders.flatMap((folder) =>
    lotTransactions({ ...folder, name: folderName(folder.facts) }, treatment),
  );
  return postMonths(current, state.closes);
}
