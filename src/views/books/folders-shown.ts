/** The names under which the browser's own record of the page keeps these moments; the benchmarks read them. */
export const FOLDERS_SHOWN = 'folders-shown';
export const BOOKS_ADDED_UP = 'books-added-up';

/** Notes, once the frame with the first folders has been drawn, when that was. */
export function markFoldersShown(): void {
  requestAnimationFrame(() => setTimeout(() => performance.mark(FOLDERS_SHOWN)));
}

/** Notes, once the frame with all of the books has been drawn, when that was. */
export function markBooksAddedUp(): void {
  markFoldersShown();
  requestAnimationFrame(() => setTimeout(() => performance.mark(BOOKS_ADDED_UP)));
}
