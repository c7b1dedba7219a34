import { rowIndex } from './use-row-presses.ts';

/** The rows that exist, in their order. */
export const rowsOf = (table: HTMLElement): readonly HTMLElement[] =>
  [...table.querySelectorAll<HTMLElement>('[data-row]')].sort((a, b) => Number(a.dataset.row) - Number(b.dataset.row));

/** Puts the keyboard on a row: on the name of a lot, or on the box of a venue. */
export function focusRow(row: HTMLElement | undefined): void {
  if (row === undefined) return;
  const target = row.querySelector<HTMLElement>('.lot-name') ?? row.querySelector<HTMLElement>('[data-press="choose"]');
  target?.focus({ preventScroll: true });
  row.scrollIntoView({ block: 'nearest' });
}

/** Moves the focus to an end of the list. Its row may come into being only once the list is scrolled there. */
export function goToEnd(table: HTMLElement | null, end: 'first' | 'last'): void {
  if (table === null) return;
  table.scrollTop = end === 'first' ? 0 : table.scrollHeight;
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const row = rowsOf(table).at(end === 'first' ? 0 : -1);
      row?.querySelector<HTMLElement>('.lot-name')?.focus({ preventScroll: true });
    }),
  );
}

/** Moves the focus some rows on or back; rows out of sight come into being as the list follows the focus. */
export function walk(table: HTMLElement | null, step: 1 | -1): void {
  if (table === null) return;
  const at = rowIndex(document.activeElement);
  const inside = at !== null && table.contains(document.activeElement);
  focusRow(inside ? rowsOf(table).find((row) => Number(row.dataset.row) === at + step) : inSight(table)[0]);
}

/** Puts the keyboard on the n-th row in sight. @param n from 1 */
export const goToNth = (table: HTMLElement | null, n: number): void => {
  if (table !== null) focusRow(inSight(table)[n - 1]);
};

function inSight(table: HTMLElement): readonly HTMLElement[] {
  const { top } = table.getBoundingClientRect();
  return rowsOf(table).filter((row) => row.getBoundingClientRect().top >= top - 1);
}
