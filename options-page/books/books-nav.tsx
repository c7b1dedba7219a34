import type { ComponentChildren } from 'preact';
import { BOOKS_PARTS } from './books-parts.ts';

interface BooksNavProps {
  /** The part that is shown. */
  readonly part: string;
  /** What stands behind the words of the bank. */
  readonly bank?: ComponentChildren;
}

/** The ways to the parts of the books. */
export function BooksNav({ part, bank }: BooksNavProps) {
  return (
    <nav class="books-nav no-print" aria-label="Books">
      {BOOKS_PARTS.filter((each) => each.part !== ':lot').map((each) => (
        <a
          key={each.part}
          href={each.part === '' ? '#/books' : `#/books/${each.part}`}
          aria-current={part === each.part ? 'page' : undefined}
        >
          {each.label}
          {each.part === 'bank' && bank}
        </a>
      ))}
    </nav>
  );
}
