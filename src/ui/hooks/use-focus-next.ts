import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * Where the keyboard goes after a row was added or removed. Parts of the screen carry `data-focus="key"`; once the part
 * with the asked key is on the page, the first thing in it that takes the focus gets it.
 */
export function useFocusNext<Root extends HTMLElement>(): [RefObject<Root | null>, (key: string) => void] {
  const root = useRef<Root>(null);
  const wanted = useRef<string | undefined>(undefined);
  // Without a list of dependencies: the part may come with any later drawing.
  useLayoutEffect(() => {
    if (wanted.current === undefined || root.current === null) return;
    const part = [...root.current.querySelectorAll<HTMLElement>('[data-focus]')].find(
      (each) => each.dataset.focus === wanted.current,
    );
    if (part === undefined) return;
    wanted.current = undefined;
    const target = part.matches(TAKES_FOCUS) ? part : part.querySelector<HTMLElement>(TAKES_FOCUS);
    target?.focus();
    if (target instanceof HTMLInputElement) target.select();
  });
  return [
    root,
    (key) => {
      wanted.current = key;
    },
  ];
}

const TAKES_FOCUS = 'input, select, textarea, button, a[href], [tabindex]';
