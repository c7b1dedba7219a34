import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** What can be pressed in a row; each is told the row's place among the lines. */
export interface RowPresses {
  readonly open: (index: number) => void;
  readonly offer: (index: number) => void;
  /** @param through whether everything from the row that was pressed before is meant */
  readonly choose: (index: number, through: boolean) => void;
}

/** How long a place that was pressed takes no other press, in milliseconds. */
const SETTLES_MS = 350;

/** Hears what is pressed in the rows: outside of them, because the rows themselves are drawn alike without any program. */
export function useRowPresses(table: RefObject<HTMLElement | null>, presses: RowPresses): void {
  const now = useRef(presses);
  now.current = presses;
  useEffect(() => {
    let last = Number.NEGATIVE_INFINITY;
    const onClick = (event: MouseEvent) => {
      const { target } = event;
      if (!(target instanceof Element) || table.current?.contains(target) !== true) return;
      const what = target.closest<HTMLElement>('[data-press]')?.dataset.press;
      const index = rowIndex(target);
      if (index === null) return;
      if (what === 'open') now.current.open(index);
      if (what === 'choose') now.current.choose(index, event.shiftKey);
      if (what === 'offer') {
        // A row that is done may leave its place to the next one: the second half of a double press is not meant for that.
        const again = event.timeStamp - last < SETTLES_MS;
        last = event.timeStamp;
        if (!again) now.current.offer(index);
      }
    };
    document.addEventListener('click', onClick);
    return () => document.removeEventListener('click', onClick);
  }, [table]);
}

/** The place among the lines of the row that an element is in. */
export function rowIndex(element: Element | null): number | null {
  const text = element?.closest<HTMLElement>('[data-row]')?.dataset.row;
  return text === undefined ? null : Number(text);
}
