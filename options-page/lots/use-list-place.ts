import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { isLot, type ListLine } from '../../src/views/lots/list-lines.ts';
import { listMemory } from '../place/list-memory.ts';
import { focusRow, rowsOf } from './row-focus.ts';
import { rowIndex } from './use-row-presses.ts';

/**
 * Keeps the place in the list while another screen is shown: the row at the top, and the one that the keyboard was on.
 * @param height of one row in CSS pixels
 */
export function useListPlace(
  table: RefObject<HTMLDivElement | null>,
  lines: readonly ListLine[],
  height: number,
  printing: boolean,
): void {
  const now = useRef(lines);
  now.current = lines;
  useLayoutEffect(() => {
    const element = table.current;
    if (element === null || printing) return;
    goBack(element, now.current, height);
    const note = () => {
      const at = Math.floor(element.scrollTop / height);
      const line = now.current.slice(at).find(isLot);
      listMemory.top = line && { lot: line.id, past: element.scrollTop - at * height };
    };
    const noteFocus = () => {
      const line = now.current[rowIndex(document.activeElement) ?? -1];
      if (line !== undefined) listMemory.focus = isLot(line) ? line.id : undefined;
    };
    element.addEventListener('scroll', note, { passive: true });
    element.addEventListener('focusin', noteFocus);
    return () => {
      element.removeEventListener('scroll', note);
      element.removeEventListener('focusin', noteFocus);
    };
  }, [table, height, printing]);
}

function goBack(element: HTMLElement, lines: readonly ListLine[], height: number): void {
  const { top, focus } = listMemory;
  const placeOf = (id: string | undefined) => lines.findIndex((line) => isLot(line) && line.id === id);
  const at = placeOf(top?.lot);
  if (top !== undefined && at !== -1) element.scrollTop = at * height + top.past;
  const focused = placeOf(focus);
  if (focused === -1) return;
  // Its row comes into being only once the list stands there.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const elsewhere = document.activeElement !== null && document.activeElement !== document.body;
      if (!elsewhere) focusRow(rowsOf(element).find((row) => Number(row.dataset.row) === focused));
    }),
  );
}
