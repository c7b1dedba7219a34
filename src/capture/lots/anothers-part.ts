import { ancestorsOf, isWithin, type PageElement, type PageNode } from '../dom/page-tree.ts';
import type { LotMark } from './lot-marks.ts';

/** Whether the largest part around a figure that does not hold the VIN tells of another car. */
export function isAnothers(figure: PageNode, vins: readonly PageNode[], others: readonly LotMark[]): boolean {
  let part: PageElement | null = figure.kind === 'element' ? figure : figure.parent;
  if (vins.some((vin) => part !== null && isWithin(vin, part))) return false;
  for (const up of ancestorsOf(part)) {
    if (vins.some((vin) => isWithin(vin, up))) break;
    part = up;
  }
  return others.some((mark) => part !== null && isWithin(mark.element, part));
}

/** VINs and names of cars that are not this one. */
export function marksOfOthers(marks: readonly LotMark[], vin: string, at: readonly PageNode[]): readonly LotMark[] {
  return [...marks.filter((mark) => mark.kind === 'vin' && mark.key !== vin), ...otherNames(marks, at)];
}

/** Names of cars that are not the name that stands nearest to the VIN. */
function otherNames(marks: readonly LotMark[], vins: readonly PageNode[]): readonly LotMark[] {
  const names = marks.filter((mark) => mark.kind === 'name');
  const [first] = vins;
  const own = names.find((mark) => mark.heading === 1) ?? nearest(names, first);
  return own === undefined ? names : names.filter((mark) => mark.key !== own.key);
}

function nearest(names: readonly LotMark[], to: PageNode | undefined): LotMark | undefined {
  if (to === undefined) return undefined;
  const distance = (mark: LotMark) => Math.abs(mark.element.order - to.order);
  return names.toSorted((a, b) => distance(a) - distance(b))[0];
}
