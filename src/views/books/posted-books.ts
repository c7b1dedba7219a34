import type { Bookkeeping } from '../../domain/accounts/accounts.ts';
import { attemptEach } from '../../domain/attempt.ts';
import type { Month } from '../../domain/books/month.ts';
import { accrualMonths, accrualOf } from '../../domain/books/post/accrual.ts';
import { lotTransactions } from '../../domain/books/post/lot-transactions.ts';
import { type PostedBooks, postMonths } from '../../domain/books/post/post-months.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import { folderName } from './folder-name.ts';
import type { Folders } from './folders-of.ts';

/**
 * All folders as double entry, each transaction in the month in which it counts, with what is accrued at month ends. Of a
 * lot whose folder can't be worked out, what closed months hold stays, and nothing else is booked.
 * @param through the last month that is over, or is being closed: what is not billed at its end is accrued
 */
export function postedBooks(
  { folders, apart }: Folders,
  { closes }: Pick<BooksState, 'closes'>,
  { treatment }: Pick<Bookkeeping, 'treatment'>,
  through: Month,
): PostedBooks {
  const months = accrualMonths(closes, through);
  const { done, failed } = attemptEach(folders, (folder) =>
    lotTransactions(
      {
        ...folder,
        name: folderName(folder.facts),
        venue: folder.facts.venueName,
        accrual: accrualOf(folder, months),
      },
      treatment,
    ),
  );
  const unknown = new Set<string>([...apart.map(({ lot }) => lot.id), ...failed.map(({ item }) => item.lot)]);
  // Left out, they would be taken back from the months in which they were closed.
  const frozen = closes.flatMap(({ transactions }) => transactions.filter(({ lot }) => unknown.has(lot)));
  return postMonths([...done.flat(), ...frozen], closes);
}
