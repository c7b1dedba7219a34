import { elementScroll, observeElementOffset, observeElementRect, Virtualizer } from '@tanstack/virtual-core';
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';

export interface VirtualRow {
  readonly index: number;
  /** Where it begins, in CSS pixels from the top of all rows. */
  readonly start: number;
}

interface RowHeights {
  /** Of one row in CSS pixels, the same for all but one. */
  readonly height: number;
  /** The one row below which something is open, and how high that is. */
  readonly open?: { readonly index: number; readonly height: number } | undefined;
}

/** The rows in sight of a scrolling element, and the height all of them would take. */
export function useVirtualRows(
  scroller: RefObject<HTMLElement | null>,
  count: number,
  { height, open }: RowHeights,
): { items: readonly VirtualRow[]; total: number } {
  const [, redraw] = useState(0);
  const options = {
    count,
    estimateSize: (index: number) => (index === open?.index ? height + open.height : height),
    getScrollElement: () => scroller.current,
    observeElementOffset,
    observeElementRect,
    scrollToFn: elementScroll,
    overscan: 6,
    // Rows are drawn before the scroller is measured, so that the first screenful does not wait for a second pass.
    initialRect: { width: 1000, height: 700 },
    onChange: () => redraw((n) => n + 1),
  };
  const [virtualizer] = useState(() => new Virtualizer<HTMLElement, HTMLElement>(options));
  virtualizer.setOptions({ ...virtualizer.options, ...options });
  useEffect(() => virtualizer._didMount(), [virtualizer]);
  useLayoutEffect(() => virtualizer._willUpdate());
  useLayoutEffect(() => virtualizer.measure(), [virtualizer, height, open?.index, open?.height]);
  return { items: virtualizer.getVirtualItems(), total: virtualizer.getTotalSize() };
}
