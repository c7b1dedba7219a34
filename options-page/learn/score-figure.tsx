import type { ComponentChildren } from 'preact';
import { TermLink } from '../../src/ui/term-link.tsx';
import type { TermId } from '../../src/views/words/glossary.ts';

interface ScoreFigureProps {
  readonly term: TermId;
  readonly label: string;
  readonly value: string;
  readonly children: ComponentChildren;
}

/** One figure with its name, which leads to what it means, and what it is to be held against. */
export function ScoreFigure({ term, label, value, children }: ScoreFigureProps) {
  return (
    <div class="score-figure">
      <dt class="small quiet">
        <TermLink term={term}>{label}</TermLink>
      </dt>
      <dd>
        <span class="figure">{value}</span>
        <span class="small quiet score-note">{children}</span>
      </dd>
    </div>
  );
}
