import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, type PageElement, textOf } from '../dom/page-tree.ts';
import { headingLevel } from '../text/lines.ts';
import { isOneLot, type LotCard, lotKey } from './lot-card.ts';
import type { LotMark } from './lot-marks.ts';

type Within = ReadonlyMap<PageElement, readonly LotMark[]>;

/**
 * Finds repeated parts of a page that each hold the marks of one lot and of no other: cards, cells with a lot each, or
 * headings with their text. Elements are alike when their tags up to the top of the page are, wherever they stand. Of all
 * such sets the one with the most lots is taken, and of those the outermost. Empty when nothing repeats.
 */
export function lotCards(within: Within): readonly LotCard[] {
  const sets = new Map<string, PageElement[]>();
  for (const element of within.keys()) {
    const key = pathKey(element);
    const set = sets.get(key);
    if (set === undefined) sets.set(key, [element]);
    else set.push(element);
  }
  let best: readonly PageElement[] = [];
  for (const set of sets.values()) {
    const lots = lotsAmong(set, within);
    if (lots.length < 2 || lots.length < best.length) continue;
    const outer = (lots[0]?.depth ?? 0) < (best[0]?.depth ?? 0);
    if (lots.length > best.length || outer) best = lots;
  }
  const cards = best
    .toSorted((a, b) => a.order - b.order)
    .map((start, at, all): LotCard => ({ roots: rootsOf(start, all[at + 1], all), marks: within.get(start) ?? [] }));
  return cards.every(saysMoreThanItsMark) ? cards : [];
}

function pathKey(element: PageElement): string {
  const tags: string[] = [];
  for (let up: PageElement | null = element; up !== null; up = up.parent) tags.push(up.tag);
  return tags.join('<');
}

/** The elements of a set that are lots; none where the set is no list. */
function lotsAmong(set: readonly PageElement[], within: Within): readonly PageElement[] {
  const marksOf = (element: PageElement) => within.get(element) ?? [];
  const lots = set.filter((element) => isOneLot(marksOf(element)));
  // Where some hold several, the lots are further within; a stray one is the page's own lot with others beside.
  if (lots.length < set.length * 0.7) return [];
  const keys = lots.map((element) => lotKey(marksOf(element)));
  const different = new Set(keys).size;
  if (different < 2 || different < keys.length * 0.7) return [];
  const has = (kind: LotMark['kind']) =>
    lots.filter((element) => marksOf(element).some((mark) => mark.kind === kind)).length;
  return has('vin') >= lots.length * 0.7 || has('name') >= lots.length * 0.7 ? lots : [];
}

/** A card with what follows it up to the next: its other rows, or the text under a heading. */
function rootsOf(
  start: PageElement,
  next: PageElement | undefined,
  all: readonly PageElement[],
): readonly PageElement[] {
  const siblings = (start.parent?.children ?? [start]).filter(
    (child): child is PageElement => child.kind === 'element',
  );
  const from = siblings.indexOf(start);
  const isNeighbour = next !== undefined && next.parent === start.parent;
  const to = isNeighbour ? siblings.indexOf(next) : endOfLast(siblings, from, start, all);
  const after = siblings.slice(from + 1, to);
  return [start, ...untilNextLot(start, after)];
}

/** After the last card of its kind as much belongs to it as follows the others. */
function endOfLast(
  siblings: readonly PageElement[],
  from: number,
  start: PageElement,
  all: readonly PageElement[],
): number {
  const places = all.filter((one) => one.parent === start.parent).map((one) => siblings.indexOf(one));
  const gaps = places.slice(1).map((place, at) => place - (places[at] ?? 0));
  return Math.min(siblings.length, from + Math.max(1, ...(gaps.length === 0 ? [1] : [Math.min(...gaps)])));
}

/** What follows a lot up to something built like one: that is another, of which only the VIN and the name are not known. */
function untilNextLot(start: PageElement, after: readonly PageElement[]): readonly PageElement[] {
  const parts = (element: PageElement) =>
    element.children.filter((child) => child.kind === 'element' && textOf(child).trim() !== '').length;
  const isAlike = (one: PageElement) =>
    one.tag === start.tag &&
    sharesClass(one, start) &&
    (hasClass(start) || parts(one) >= Math.max(2, parts(start) / 2));
  const level = headingLevel(start);
  // A heading between two lots is over what follows it.
  const isOver = (one: PageElement) => headingLevel(one) > 0 && (level === 0 || headingLevel(one) <= level);
  const next = after.findIndex((one) => isAlike(one) || isOver(one));
  return next < 0 ? after : after.slice(0, next);
}

const hasClass = (element: PageElement): boolean => attributeOf(element, 'class').trim() !== '';

function sharesClass(a: PageElement, b: PageElement): boolean {
  const classes = (element: PageElement) =>
    attributeOf(element, 'class')
      .split(/\s+/)
      .filter((name) => name !== '');
  const [one, other] = [classes(a), classes(b)];
  return (one.length === 0 && other.length === 0) || one.some((name) => other.includes(name));
}

const LONGEST_NAME = 60;

/** A line that holds a VIN or a name and nothing else is a fact of some lot, not a lot. */
function saysMoreThanItsMark(card: LotCard): boolean {
  const said = card.roots.reduce((length, root) => length + cleanLine(textOf(root)).length, 0);
  const names = card.marks.filter((mark) => mark.key.length <= LONGEST_NAME);
  return said > Math.max(0, ...names.map((mark) => mark.key.length)) + 5;
}
