import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { useFaultsAt } from './faults-at.tsx';
import './entry-fold.css';

export interface EntryFoldProps {
  readonly title: string;
  /** What there is to know without opening it. */
  readonly summary: ComponentChildren;
  readonly path: readonly PropertyKey[];
  readonly openAtFirst: boolean;
  readonly focusKey: string;
  readonly children: ComponentChildren;
}

/** One of several entries, folded to its name until it is opened. What is wrong inside opens it. */
export function EntryFold({ title, summary, path, openAtFirst, focusKey, children }: EntryFoldProps) {
  const [open, setOpen] = useState(openAtFirst);
  const faulty = useFaultsAt(path).length > 0;
  return (
    <details
      class="panel entry-fold"
      open={open || faulty}
      onToggle={(event) => setOpen(event.currentTarget.open)}
      data-focus={focusKey}
    >
      <summary>
        <h2>{title}</h2>
        <span class="quiet small">{summary}</span>
      </summary>
      <div class="stack loose entry-body">{children}</div>
    </details>
  );
}
