import type { FolderWords } from '../../src/views/books/folder-words.ts';
import { BooksNav } from './books-nav.tsx';
import { FirstFolders, SHOWS_FOLDERS } from './first-folders.tsx';
import './books.css';

interface BooksOpeningProps {
  readonly part: string;
  readonly first: readonly FolderWords[];
}

/** What stands in a part of the books until they are added up. */
export function BooksOpening({ part, first }: BooksOpeningProps) {
  return first.length > 0 && SHOWS_FOLDERS.has(part) ? (
    <div class="stack loose" aria-busy="true">
      <FirstFolders part={part} rows={first} />
    </div>
  ) : (
    <div class="stack" aria-busy="true">
      <h1>Books</h1>
      <p role="status">Opening the books…</p>
    </div>
  );
}

/** The whole screen of the books until its program has come. */
export function BooksMeanwhile(props: BooksOpeningProps) {
  return (
    <div class="stack loose books">
      <BooksNav part={props.part} />
      <BooksOpening {...props} />
    </div>
  );
}
