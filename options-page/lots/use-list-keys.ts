import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

interface ListKeys {
  readonly table: RefObject<HTMLDivElement | null>;
  readonly searchBox: RefObject<HTMLInputElement | null>;
  readonly onKeySheet: () => void;
}

/**
 * The list's keys: the arrows, Home and End move along the rows; S searches, A adds lots, K shows the keys. Never while
 * something is typed. A letter acts only while the focus is in the list or its tools (WCAG 2.1.4).
 */
export function useListKeys({ table, searchBox, onKeySheet }: ListKeys): void {
  // Before the rows are drawn: a key pressed the moment they appear must not be lost.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      const act = actionFor(event.key, table, searchBox, onKeySheet);
      if (act === null) return;
      event.preventDefault();
      act();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [table, searchBox, onKeySheet]);
}

function actionFor(
  key: string,
  table: ListKeys['table'],
  searchBox: ListKeys['searchBox'],
  onKeySheet: () => void,
): (() => void) | null {
  switch (key) {
    case 'ArrowDown':
      return () => walk(table.current, 1);
    case 'ArrowUp':
      return () => walk(table.current, -1);
    case 'Home':
      return () => goToEnd(table.current, 'first');
    case 'End':
      return () => goToEnd(table.current, 'last');
  }
  if (document.activeElement?.closest('.watchlist') == null) return null;
  switch (key.toLowerCase()) {
    case 's':
      return () => searchBox.current?.focus();
    case 'a':
      return () => location.assign('#/add');
    case 'k':
      return onKeySheet;
    default:
      return null;
  }
}

/** The rows that exist, in their order. */
const rowLinks = (table: HTMLElement): readonly HTMLAnchorElement[] =>
  [...table.querySelectorAll<HTMLAnchorElement>('a[data-row]')].sort(
    (a, b) => Number(a.dataset.row) - Number(b.dataset.row),
  );

/** Moves the focus to an end of the list. Its row may come into being only once the list is scrolled there. */
function goToEnd(table: HTMLElement | null, end: 'first' | 'last'): void {
  if (table === null) return;
  table.scrollTop = end === 'first' ? 0 : table.scrollHeight;
  requestAnimationFrame(() =>
    requestAnimationFrame(() =>
      rowLinks(table)
        .at(end === 'first' ? 0 : -1)
        ?.focus({ preventScroll: true }),
    ),
  );
}

/** Moves the focus one row; rows out of sight come into being as the list follows the focus. */
function walk(table: HTMLElement | null, step: 1 | -1): void {
  if (table === null) return;
  const links = rowLinks(table);
  const at = links.indexOf(document.activeElement as HTMLAnchorElement);
  const next =
    at === -1
      ? links.find((link) => link.getBoundingClientRect().top >= table.getBoundingClientRect().top)
      : links[at + step];
  next?.focus({ preventScroll: true });
  next?.closest('[role=row]')?.scrollIntoView({ block: 'nearest' });
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, select, textarea, [contenteditable]');
}
