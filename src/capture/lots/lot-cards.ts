import { type PageElement, textOf } from '../dom/page-tree.ts';
import { cleanLine } from '../text/clean-text.ts';
import type { LotMark } from './lot-marks.ts';

/** One lot of a list: usually one element, or a heading with what follows it. */
export interface LotCard {
  readonly roots: readonly PageElement[];
  readonly marks: readonly LotMark[];
}

/**
 * Finds repeated parts of a page that each hold the marks of one lot and of no other: cards, table rows, or headings
 * with their text. Empty when nothing repeats.
 */
export function lotCards(root: PageElement, marks: readonly LotMark[]): readonly LotCard[] {
  const within = new Map<PageElement, LotMark[]>();
  for (const mark of marks) {
    for (let up: PageElement | null = mark.element; up !== null; up = up.parent) {
      const list = within.get(up);
      if (list === undefined) within.set(up, [mark]);
      else list.push(mark);
    }
  }
  const cards: LotCard[] = [];
  const waiting: PageElement[] = [root];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const group = cardsAmong(next, within);
    cards.push(...group);
    const taken = new Set(group.flatMap((card) => card.roots));
    for (const child of next.children) {
      if (child.kind === 'element' && !taken.has(child) && within.has(child)) waiting.push(child);
    }
  }
  return cards.sort((a, b) => (a.roots[0]?.order ?? 0) - (b.roots[0]?.order ?? 0));
}

function cardsAmong(parent: PageElement, within: ReadonlyMap<PageElement, readonly LotMark[]>): readonly LotCard[] {
  const children = parent.children.filter((child): child is PageElement => child.kind === 'element');
  const marked = children.filter((child) => isOneLot(within.get(child) ?? []));
  const groups = alike(marked).filter((group) => areDifferentLots(group, within) && haveMarksAlike(group, within));
  const most = groups.reduce<readonly PageElement[]>((best, group) => (group.length > best.length ? group : best), []);
  if (most.length < 2) return [];
  const even = areEvenlySpaced(most, children);
  const cards = most.map((start, at): LotCard => {
    const end = most[at + 1];
    const from = children.indexOf(start);
    const to = end === undefined ? endOfLast(children, from, most) : children.indexOf(end);
    const after = children.slice(from + 1, Math.max(to, from + 1));
    return { roots: [start, ...(even ? after : untilNextLot(start, after))], marks: within.get(start) ?? [] };
  });
  return cards.every(saysMoreThanItsMark) ? cards : [];
}

/** Lots that take two rows each take two rows each. */
function areEvenlySpaced(group: readonly PageElement[], children: readonly PageElement[]): boolean {
  const places = group.map((one) => children.indexOf(one));
  const gaps = places.slice(1).map((place, at) => place - (places[at] ?? 0));
  return gaps.length > 1 && new Set(gaps).size === 1;
}

/** What follows a lot up to something built like one: that is another, of which only the VIN and the name are not known. */
function untilNextLot(start: PageElement, after: readonly PageElement[]): readonly PageElement[] {
  const parts = (element: PageElement) =>
    element.children.filter((child) => child.kind === 'element' && textOf(child).trim() !== '').length;
  const next = after.findIndex((one) => sameBuild(start, one) && parts(one) >= Math.max(2, parts(start) / 2));
  return next < 0 ? after : after.slice(0, next);
}

const LONGEST_NAME = 60;

/** A line that holds a VIN or a name and nothing else is a fact of some lot, not a lot. */
function saysMoreThanItsMark(card: LotCard): boolean {
  const said = card.roots.reduce((length, root) => length + cleanLine(textOf(root)).length, 0);
  // A line that holds all there is to say of a lot is its own mark by name; what it says is more than a name.
  const names = card.marks.filter((mark) => mark.key.length <= LONGEST_NAME);
  return said > Math.max(0, ...names.map((mark) => mark.key.length)) + 12;
}

/** The lots of a list are named in the same way: all by VIN, or all by name. */
function haveMarksAlike(group: readonly PageElement[], within: ReadonlyMap<PageElement, readonly LotMark[]>): boolean {
  const has = (kind: LotMark['kind']) =>
    group.filter((child) => within.get(child)?.some((mark) => mark.kind === kind)).length >= group.length * 0.7;
  return has('vin') || has('name');
}

/** Unmarked elements after a card belong to it (a second table row, the text under a heading), of the last as many as of the others. */
function endOfLast(children: readonly PageElement[], from: number, group: readonly PageElement[]): number {
  const first = group[0];
  const second = group[1];
  if (first === undefined || second === undefined) return from + 1;
  return Math.min(children.length, from + children.indexOf(second) - children.indexOf(first));
}

/** Whether marks can all be of the same lot. */
export function isOneLot(marks: readonly LotMark[]): boolean {
  const vins = new Set(marks.flatMap((mark) => (mark.kind === 'vin' ? [mark.key] : [])));
  const names = new Set(marks.flatMap((mark) => (mark.kind === 'name' ? [mark.key] : [])));
  return marks.length > 0 && vins.size <= 1 && (vins.size === 1 ? names.size <= 3 : names.size <= 2);
}

function areDifferentLots(
  group: readonly PageElement[],
  within: ReadonlyMap<PageElement, readonly LotMark[]>,
): boolean {
  const keys = group.map((child) => {
    const marks = within.get(child) ?? [];
    return (marks.find((mark) => mark.kind === 'vin') ?? marks[0])?.key ?? '';
  });
  return new Set(keys).size >= 2 && new Set(keys).size >= keys.length * 0.7;
}

/** Groups of elements of the same build: same tag, a class in common or none at all, and of comparable size. */
function alike(elements: readonly PageElement[]): readonly (readonly PageElement[])[] {
  const groups: PageElement[][] = [];
  for (const element of elements) {
    const group = groups.find((one) => one[0] !== undefined && sameBuild(one[0], element));
    if (group !== undefined) group.push(element);
    else if (groups.length < 50) groups.push([element]);
  }
  return groups;
}

function sameBuild(a: PageElement, b: PageElement): boolean {
  if (a.tag !== b.tag) return false;
  const [one, other] = [classesOf(a), classesOf(b)];
  if (one.size === 0 && other.size === 0) return sizeOf(a) <= 6 * sizeOf(b) && sizeOf(b) <= 6 * sizeOf(a);
  return [...one].some((name) => other.has(name));
}

const classesOf = (element: PageElement): ReadonlySet<string> =>
  new Set((element.attributes.get('class') ?? '').split(/\s+/).filter((name) => name !== ''));

function sizeOf(element: PageElement): number {
  return element.children.reduce((sum, child) => sum + (child.kind === 'element' ? sizeOf(child) : 0), 1);
}
