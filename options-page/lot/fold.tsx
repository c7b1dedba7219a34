import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import './fold.css';

export interface FoldProps {
  /** The same for every lot, so that a part stays open when the buyer goes from lot to lot. */
  readonly id: string;
  readonly title: string;
  /** What it comes to, readable without opening it. */
  readonly result: ComponentChildren;
  /** What is drawn only once it is opened. */
  readonly children: () => ComponentChildren;
}

/** Which parts the buyer has opened, for as long as the page lives. */
const opened = new Map<string, boolean>();

/** One part of the worksheet: its result always, what is behind it when it is asked for. */
export function Fold({ id, title, result, children }: FoldProps) {
  const [open, setOpen] = useState(opened.get(id) ?? false);
  return (
    <details
      class="fold"
      id={`part-${id}`}
      open={open}
      onToggle={(event) => {
        opened.set(id, event.currentTarget.open);
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>
        <h2>{title}</h2>
        <span class="fold-result">{result}</span>
      </summary>
      {open && <div class="stack loose fold-body">{children()}</div>}
    </details>
  );
}

/** Opens a part and goes there. */
export function showFold(id: string): void {
  const part = document.getElementById(`part-${id}`);
  if (!(part instanceof HTMLDetailsElement)) return;
  part.open = true;
  part.querySelector('summary')?.focus();
  part.scrollIntoView({ block: 'start' });
}
