import { elementScroll, observeElementOffset, observeElementRect, Virtualizer } from '@tanstack/virtual-core';
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';

export interface VirtualRow {
  readonly index: number;
  readonly start: number;
}

/**
 * The rows in sight of a scrolling element, and the height all of them would take.
 * @param height of one row in CSS pixels, the same for all
 */
export function useVirtualRows(
  scroller: RefObject<HTMLElement | null>,
  count: number,
  height: number,
): { items: readonly VirtualRow[]; total: number } {
  const [, redraw] = useState(0);
  const options = {
    count,
    estimateSize: () => height,
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
  useLayoutEffect(() => virtualizer.measure(), [virtualizer, height]);
  return { items: virtualizer.getVirtualItems(), total: virtualizer.getTotalSize() };
}
