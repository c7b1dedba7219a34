import type { FolderWords } from '../../src/views/books/folder-words.ts';
import { markFoldersShown } from '../../src/views/books/folders-shown.ts';
import { FirstFolder, FirstShare, isBought } from '../books/first-folders.tsx';
import { drawOnce } from './draw-once.ts';
import { standIn } from './show-first-rows.tsx';
import '../books/books.css';

/** Rows are at least this high, in CSS pixels. */
const ROW = 30;

/** Draws the first rows of a part of the books, as it will draw them. Does nothing when there are none. */
export async function showFirstFolders(rows: readonly FolderWords[], part: string, page: HTMLElement): Promise<void> {
  const markup = document.getElementById(part === 'share' ? 'first-share' : 'first-folders');
  if (rows.length === 0 || !(markup instanceof HTMLTemplateElement)) return;
  const frame = document.importNode(markup.content, true);
  const inSight = Math.ceil(innerHeight / ROW);
  const drawn =
    part === 'share'
      ? rows.filter(isBought).map((words) => <FirstShare key={words.lot} words={words} />)
      : rows.map((words) => <FirstFolder key={words.lot} words={words} />);
  frame.querySelector('.first-folders')?.append(...drawOnce(drawn.slice(0, inSight)));
  await standIn(frame, page, () => markFoldersShown());
}
