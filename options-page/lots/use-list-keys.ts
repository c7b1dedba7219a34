import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { goToEnd, goToNth, walk } from './row-focus.ts';
import { rowIndex } from './use-row-presses.ts';

/** What the letters do; those that act on a row are told its place among the lines. */
export interface ListKeys {
  readonly table: RefObject<HTMLDivElement | null>;
  readonly searchBox: RefObject<HTMLInputElement | null>;
  readonly onKeySheet: () => void;
  readonly onByVenue: () => void;
  readonly onChooseAll: () => void;
  readonly onRow: Readonly<Record<'choose' | 'open' | 'offer', (index: number) => void>>;
}

/**
 * The list's keys: the arrows, Home, End and the figures move along the rows; a letter stands for what it does (see the
 * sheet of keys). Never while something is typed. A letter acts only while the focus is in the list or its tools (WCAG 2.1.4).
 */
export function useListKeys(keys: ListKeys): void {
  const now = useRef(keys);
  now.current = keys;
  // Before the rows are drawn: a key pressed the moment they appear must not be lost.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || isTyping(event.target)) return;
      const act = walkFor(event.key, now.current) ?? letterFor(event, now.current);
      if (act === null) return;
      event.preventDefault();
      act();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
}

function walkFor(key: string, { table }: ListKeys): (() => void) | null {
  // The arrows of a group of buttons are its own.
  if (document.activeElement?.closest('[role="radiogroup"]') != null) return null;
  switch (key) {
    case 'ArrowDown':
      return () => walk(table.current, 1);
    case 'ArrowUp':
      return () => walk(table.current, -1);
    case 'Home':
      return () => goToEnd(table.current, 'first');
    case 'End':
      return () => goToEnd(table.current, 'last');
    default:
      return null;
  }
}

function letterFor({ key, shiftKey }: KeyboardEvent, keys: ListKeys): (() => void) | null {
  const place = document.activeElement;
  if (place?.closest('.watchlist') == null) return null;
  if (/^[1-9]$/.test(key)) return () => goToNth(keys.table.current, Number(key));
  const index = rowIndex(place);
  const onRow = (act: keyof ListKeys['onRow']) => (index === null ? null : () => keys.onRow[act](index));
  switch (key.toLowerCase()) {
    case 's':
      return () => keys.searchBox.current?.focus();
    case 'f':
      return () => focusOn('.list-shows [aria-checked="true"]');
    case 'b':
      return () => focusOn('.bulk-bar button');
    case 'g':
      return keys.onByVenue;
    case 'c':
      return shiftKey ? keys.onChooseAll : onRow('choose');
    case 'd':
      return onRow('open');
    case 'p':
      return onRow('offer');
    case 'a':
      return () => location.assign('#/add');
    case 'k':
      return keys.onKeySheet;
    default:
      return null;
  }
}

const focusOn = (css: string) => document.querySelector<HTMLElement>(`.watchlist ${css}`)?.focus();

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.matches('input:not([type="checkbox"]), select, textarea, [contenteditable]');
}
