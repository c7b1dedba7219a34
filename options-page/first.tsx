import '../src/ui/look/look.css';
import { build } from '../src/browser/build.ts';
import { readFirstRows } from '../src/store/views/read-first-rows.ts';
import { isDemo } from '../src/ui/demo-mode.ts';
import type { RowWords } from '../src/views/lots/row-words.ts';
import { loadLater } from './first/load-later.ts';
import { holdPainting, showFirstRows, startPainting } from './first/show-first-rows.tsx';

const SHOWS_LIST = new Set(['', '#', '#/', '#/lots']);
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
  const reading = SHOWS_LIST.has(location.hash) && !isDemo() ? rowsKept() : [];
  await wholePage;
  const page = document.getElementById('page');
  if (page !== null) await showFirstRows(await reading, page);
}

function rowsKept(): Promise<readonly RowWords[]> {
  holdPainting();
  const late = new Promise<readonly unknown[]>((resolve) => setTimeout(() => resolve([]), PATIENCE_MS));
  return Promise.race([readFirstRows(build()), late]) as Promise<readonly RowWords[]>;
}

// Whatever is wrong with the first rows, the list itself must come.
start()
  .catch(reportError)
  .finally(() => {
    startPainting();
    return loadLater();
  });
