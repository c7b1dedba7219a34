import '../src/ui/look/look.css';
import { build } from '../src/browser/build.ts';
import type { Instant } from '../src/domain/time/instant.ts';
import { readFirstRows } from '../src/store/views/read-first-rows.ts';
import { isDemo } from '../src/ui/demo-mode.ts';
import type { FolderWords } from '../src/views/books/folder-words.ts';
import type { RowWords } from '../src/views/lots/row-words.ts';
import { loadLater } from './first/load-later.ts';
import { showFirstFolders } from './first/show-first-folders.tsx';
import { holdPainting, showFirstRows, startPainting } from './first/show-first-rows.tsx';

const SHOWS_LIST = new Set(['', '#', '#/', '#/lots']);
/** The list of folders, and the cars to split a bill between. */
const BOOKS = /^#\/books(?:\/(|share))?$/;
/** A database that takes this long is being changed by another tab, and the program has words for that. */
const PATIENCE_MS = 500;

/**
 * What the page begins with: the list's first rows as they were put into words when they last changed, so that a buyer
 * can read the next closes while the program that works them out is still being loaded.
 */
async function start(): Promise<void> {
  const wholePage = new Promise<unknown>((resolve) => {
    if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', resolve);
    else resolve(undefined);
  });
  // Asked before the page itself is there: the browser takes as long to open a database.
  const books = BOOKS.exec(location.hash);
  const part = books === null ? null : (books[1] ?? '');
  const what = SHOWS_LIST.has(location.hash) ? 'first-rows' : part === null ? null : 'first-folders';
  const reading = what === null || isDemo() ? [] : rowsKept(what);
  await wholePage;
  const page = document.getElementById('page');
  if (page === null) return;
  const rows = await reading;
  if (part === null) await showFirstRows(rows as readonly RowWords[], page);
  else await showFirstFolders(rows as readonly FolderWords[], part, page);
}

function rowsKept(what: 'first-rows' | 'first-folders'): Promise<readonly unknown[]> {
  holdPainting();
  const late = new Promise<readonly unknown[]>((resolve) => setTimeout(() => resolve([]), PATIENCE_MS));
  return Promise.race([readFirstRows(build(), { what, now: Date.now() as Instant }), late]);
}

// Whatever is wrong with the first rows, the list itself must come.
start()
  .catch(reportError)
  .finally(() => {
    startPainting();
    return loadLater();
  });
