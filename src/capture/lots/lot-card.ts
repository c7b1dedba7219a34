import type { PageElement } from '../dom/page-tree.ts';
import type { LotMark } from './lot-marks.ts';

/** One lot of a list: usually one element, a heading with what follows it, or the cells of a column. */
export interface LotCard {
  readonly roots: readonly PageElement[];
  readonly marks: readonly LotMark[];
}

/** The marks within each element of the page. */
export function marksWithin(marks: readonly LotMark[]): ReadonlyMap<PageElement, readonly LotMark[]> {
  const within = new Map<PageElement, LotMark[]>();
  for (const mark of marks) {
    for (let up: PageElement | null = mark.element; up !== null; up = up.parent) {
      const list = within.get(up);
      if (list === undefined) within.set(up, [mark]);
      else list.push(mark);
    }
  }
  return within;
}

/** Whether marks can all be of the same lot. */
export function isOneLot(marks: readonly LotMark[]): boolean {
  const vins = new Set(marks.flatMap((mark) => (mark.kind === 'vin' && !mark.prose ? [mark.key] : [])));
  const names = new Set(marks.flatMap((mark) => (mark.kind === 'name' && !mark.prose ? [mark.key] : [])));
  return marks.length > 0 && vins.size <= 1 && (vins.size === 1 ? names.size <= 3 : names.size <= 2);
}

/** The key by which a lot is told from its neighbours: its VIN, else its name. */
export const lotKey = (marks: readonly LotMark[]): string =>
  (marks.find((mark) => mark.kind === 'vin') ?? marks[0])?.key ?? '';
