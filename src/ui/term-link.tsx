import type { ComponentChildren } from 'preact';
import type { TermId } from '../views/words/glossary.ts';
import { wordsHash } from '../views/words/words-hash.ts';

/** The label of a figure, which leads to what the figure means and where it comes from. */
export function TermLink({ term, children }: { term: TermId; children: ComponentChildren }) {
  return (
    <a class="term" href={wordsHash(term)}>
      {children}
    </a>
  );
}
