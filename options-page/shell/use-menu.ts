import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

export interface Menu {
  /** Holds the button and what it opens. */
  readonly root: RefObject<HTMLDivElement | null>;
  readonly open: boolean;
  readonly turn: () => void;
  readonly close: () => void;
}

/**
 * Links that a button shows and hides (WAI-ARIA Authoring Practices, disclosure navigation). Escape closes them and goes back
 * to the button; so does a press elsewhere, and the keyboard when it leaves.
 */
export function useMenu(): Menu {
  const root = useRef<HTMLDivElement>(null);
  const [open, setOpen] = useState(false);
  // Before anything is drawn, so that a key which follows at once is heard.
  useLayoutEffect(() => {
    if (!open) return;
    const elsewhere = ({ target }: Event) => {
      if (target instanceof Node && !root.current?.contains(target)) setOpen(false);
    };
    const atEscape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      setOpen(false);
      root.current?.querySelector('button')?.focus();
    };
    // Captured, so that it is heard before a screen that has keys of its own.
    addEventListener('pointerdown', elsewhere, true);
    addEventListener('focusin', elsewhere, true);
    addEventListener('keydown', atEscape, true);
    return () => {
      removeEventListener('pointerdown', elsewhere, true);
      removeEventListener('focusin', elsewhere, true);
      removeEventListener('keydown', atEscape, true);
    };
  }, [open]);
  return { root, open, turn: () => setOpen((before) => !before), close: () => setOpen(false) };
}
