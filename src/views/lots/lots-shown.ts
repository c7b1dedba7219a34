/** The name under which the browser's own record of the page keeps that moment. */
export const LOTS_SHOWN = 'lots-shown';

/** Notes, once the frame with the first lots has been drawn, when that was; the benchmarks read it. */
export function markLotsShown(): void {
  requestAnimationFrame(() => setTimeout(() => performance.mark(LOTS_SHOWN)));
}
