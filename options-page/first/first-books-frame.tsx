import { BooksNav } from '../books/books-nav.tsx';
import { FirstFolders } from '../books/first-folders.tsx';
import { Frame } from '../shell/frame.tsx';

/** A part of the books before any folder is known, for the build to write into the page as `FirstFrame` is. */
export function FirstBooksFrame({ part }: { readonly part: string }) {
  return (
    <Frame screen="books" clock={<div class="store-clock small" />}>
      <div class="stack loose books" aria-busy="true">
        <BooksNav part={part} />
        <FirstFolders part={part} rows={[]} />
      </div>
    </Frame>
  );
}
