import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

interface ListKeys {
  readonly table: RefObject<HTMLDivElement | null>;
  readonly searchBox: RefObject<HTMLInputElement | null>;
  readonly onKeySheet: () => void;
}

/** The list's keys: up and down walk the rows, / searches, n adds, ? shows the sheet. Never while something is typed. */
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
    case 'j':
      return () => walk(table.current, 1);
    case 'ArrowUp':
    case 'k':
      return () => walk(table.current, -1);
    case '/':
      return () => searchBox.current?.focus();
    case 'n':
      return () => location.assign('#/add');
    case '?':
      return onKeySheet;
    default:
      return null;
  }
}

/** Moves the focus one row; rows out of sight come into being as the list follows the focus. */
function walk(table: HTMLElement | null, step: 1 | -1): void {
  if (table === null) return;
  const links = [...table.querySelectorAll<HTMLAnchorElement>('a[data-row]')].sort(
    (a, b) => Number(a.dataset.row) - Number(b.dataset.row),
  );
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
