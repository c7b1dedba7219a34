import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { isLot, type ListLine } from '../../src/views/lots/list-lines.ts';
import { focusRow, rowsOf } from './row-focus.ts';
import { rowIndex } from './use-row-presses.ts';

/**
 * Keeps the keyboard in the list when what it was on goes: a button that has done its work, or a whole row that the list no
 * longer shows. Then it stands on that row, or on the one that took its place.
 */
export function useKeptFocus(table: RefObject<HTMLElement | null>, lines: readonly ListLine[]): void {
  const now = useRef(lines);
  now.current = lines;
  const on = useRef<{ readonly index: number; readonly line: ListLine | undefined } | undefined>(undefined);
  useEffect(() => {
    const note = ({ target }: Event) => {
      const inside = target instanceof Element && table.current?.contains(target) === true;
      const index = inside ? rowIndex(target) : null;
      if (index !== null) on.current = { index, line: now.current[index] };
      // A press or a step elsewhere is meant: nobody is called back from there.
      else if (!inside) on.current = undefined;
    };
    document.addEventListener('focusin', note);
    document.addEventListener('pointerdown', note);
    return () => {
      document.removeEventListener('focusin', note);
      document.removeEventListener('pointerdown', note);
    };
  }, [table]);
  useLayoutEffect(() => {
    if (on.current === undefined || table.current === null) return;
    if (document.activeElement !== null && document.activeElement !== document.body) return;
    // What is open below a row has the keyboard, wherever in it that was left.
    if (table.current.querySelector('.lot-panel') !== null) return;
    const { index, line } = on.current;
    const same = lines.findIndex((one) => one === line || (isLot(one) && line && isLot(line) && one.id === line.id));
    const place = same === -1 ? Math.min(index, lines.length - 1) : same;
    focusRow(rowsOf(table.current).find((row) => Number(row.dataset.row) === place));
  });
}
