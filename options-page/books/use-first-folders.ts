import { useEffect, useState } from 'preact/hooks';
import { build } from '../../src/browser/build.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { readFirstRows } from '../../src/store/views/read-first-rows.ts';
import { shownStore } from '../../src/ui/demo-mode.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { FolderWords } from '../../src/views/books/folder-words.ts';

/** The latest folders in words, of this build and for today; none where none are kept. */
export async function readFirstFolders(): Promise<readonly FolderWords[]> {
  const name = shownStore();
  const rows = readFirstRows(build(), {
    what: 'first-folders',
    now: Date.now() as Instant,
    ...(name !== undefined && { name }),
  });
  return (await rows) as readonly FolderWords[];
}

/** The same for a screen, until something changes. @param begun what the page began with, until it is read again */
export function useFirstFolders(begun: readonly FolderWords[]): readonly FolderWords[] {
  const { store } = useWorkspace();
  const [rows, setRows] = useState(begun);
  useEffect(() => {
    let current = true;
    const stop = store.subscribe(({ books, setup, lots }) => {
      if (!books && !setup && lots.length === 0) return;
      current = false;
      setRows([]);
    });
    // Without them the books open as they did the very first time.
    void readFirstFolders().then((found) => current && setRows(found));
    return () => {
      current = false;
      stop();
    };
  }, [store]);
  return rows;
}
