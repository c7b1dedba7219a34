import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

export interface BoxText {
  readonly text: string;
  /** What is in the box now: a key may come before what was typed has been drawn. */
  readonly inBox: RefObject<string>;
  readonly setText: (text: string) => void;
}

/**
 * The text of a box whose value can also come from elsewhere: it is shown at once, unless something else is being typed.
 * @param written the value in force, as the box writes it
 * @param onShown called when a value from elsewhere has taken the place of the old one
 */
export function useBoxText(written: string, onShown?: () => void): BoxText {
  const [text, show] = useState(written);
  const inBox = useRef(written);
  const lastWritten = useRef(written);
  const setText = (next: string) => {
    inBox.current = next;
    show(next);
  };
  // Before the next key: one that came between the new value and its showing would land in the old text.
  useLayoutEffect(() => {
    if (lastWritten.current === written) return;
    const held = inBox.current.trim();
    const isTyped = held !== lastWritten.current && held !== written;
    lastWritten.current = written;
    if (isTyped) return;
    setText(written);
    onShown?.();
  }, [written]);
  return { text, inBox, setText };
}
