import type { PageElement, PageTree } from '../dom/page-tree.ts';
import { ancestorsOf, attributeOf, commonAncestor, isWithin, textOf } from '../dom/page-tree.ts';
import type { TableModel } from '../text/table-model.ts';
import { asideParts } from './aside-parts.ts';
import { lotsInTables } from './list-tables.ts';
import { isOneLot, type LotCard, marksWithin } from './lot-card.ts';
import { lotCards } from './lot-cards.ts';
import type { LotMark } from './lot-marks.ts';
import { ANOTHERS, ownLot, partsOfOthers } from './own-lot.ts';

/** Which parts of the page speak of which lot. */
export interface LotPlan {
  readonly kind: 'one' | 'many';
  /** For one lot the whole page; for many the parts of each. */
  readonly lots: readonly (readonly PageElement[])[];
  /** Parts that are about other lots than these, or about none. */
  readonly skip: ReadonlySet<PageElement>;
  /** The VIN of the one lot, where the page has one with a right check digit; else empty. */
  readonly vin: string;
}

/** Tells a page about one lot (perhaps with others beside it) from a list. */
export function planLots(tree: PageTree, allMarks: readonly LotMark[], allTables: readonly TableModel[]): LotPlan {
  const asides = asideParts(tree);
  const isAside = (element: PageElement) =>
    asides.has(element) || [...ancestorsOf(element)].some((up) => asides.has(up));
  const inView = allMarks.filter((mark) => !isAside(mark.element));
  const named = inView.filter((mark) => mark.others !== true);
  const marks = named.length > 0 ? named : inView;
  const within = marksWithin(marks);
  const tables = allTables.filter(({ element }) => !isAside(element) && !isOfResults(element));
  const inTables = lotsInTables(tables, within);
  const repeated = inTables.length >= 2 ? inTables : lotCards(within);
  const cards = [...leadingCard(marks, repeated), ...repeated];
  const inCards = new Set(cards.flatMap((card) => card.roots));
  const main = mainCard(marks, cards) ?? cardOfOwn(marks, inCards, cards);
  if (cards.length < 2 || main !== null || hasLotOfItsOwn(marks, inCards, cards)) {
    const others = cards.length < 2 ? [] : cards.filter((card) => card !== main).flatMap((card) => card.roots);
    const skip = new Set([...asides, ...others]);
    const free = marks.filter((mark) => ![mark.element, ...ancestorsOf(mark.element)].some((up) => skip.has(up)));
    const own = ownLot(free);
    const strangers = inView.filter((mark) => mark.others === true && !own.marks.some(({ key }) => key === mark.key));
    return {
      kind: 'one',
      lots: [[tree.root]],
      skip: new Set([...skip, ...partsOfOthers([...free, ...strangers], own, skip)]),
      vin: own.vin,
    };
  }
  return { kind: 'many', lots: cards.map((card) => card.roots), skip: asides, vin: '' };
}

/** The one card that the page's main heading stands in: then the page is about that lot, and the others are beside it. */
function mainCard(marks: readonly LotMark[], cards: readonly LotCard[]): LotCard | null {
  const titles = marks.filter((mark) => mark.heading === 1);
  const [title] = titles;
  if (title === undefined || new Set(titles.map((mark) => mark.key)).size > 1) return null;
  return cards.find((card) => card.roots.some((root) => isWithin(title.element, root))) ?? null;
}

/**
 * The one card that tells of the lot of the main heading, where that stands outside all cards: a table of its facts built like
 * one of cars that were sold. It has a VIN and no name, or the heading's.
 */
function cardOfOwn(
  marks: readonly LotMark[],
  inCards: ReadonlySet<PageElement>,
  cards: readonly LotCard[],
): LotCard | null {
  const isOutside = (mark: LotMark) => ![mark.element, ...ancestorsOf(mark.element)].some((up) => inCards.has(up));
  const outside = marks.filter((mark) => !mark.prose && isOutside(mark));
  const titles = new Set(outside.flatMap((mark) => (mark.kind === 'name' && mark.heading > 0 ? [mark.key] : [])));
  const [title] = titles;
  if (title === undefined || titles.size > 1 || outside.some((mark) => mark.kind === 'vin')) return null;
  const fitting = cards.filter(
    ({ marks: own, roots }) =>
      !roots.some((root) => textOf(root).length < 200 && ANOTHERS.test(textOf(root))) &&
      own.some((mark) => mark.kind === 'vin') &&
      own.every((mark) => mark.kind === 'vin' || mark.key === title),
  );
  const [only] = fitting;
  return only !== undefined && fitting.length === 1 ? only : null;
}

/** A table under a heading or caption of results. */
function isOfResults(table: PageElement): boolean {
  const caption = table.children.find((child) => child.kind === 'element' && child.tag === 'caption');
  const text =
    caption?.kind === 'element'
      ? caption.children.map((child) => (child.kind === 'text' ? child.text : '')).join('')
      : '';
  return /\b(?:results|sold|yesterday|last (?:week|sale)|vendus?|vendid[oa]s?|résultats|resultados)\b/i.test(
    `${text} ${attributeOf(table, 'aria-label')}`,
  );
}

/**
 * The one lot of a list that is shown larger than the others. Its name leads to a page of its own, which that of the lot
 * whose page this is never does.
 */
function leadingCard(marks: readonly LotMark[], repeated: readonly LotCard[]): readonly LotCard[] {
  const taken = new Set(repeated.flatMap((card) => card.roots));
  const own = marks.filter((mark) => ![mark.element, ...ancestorsOf(mark.element)].some((up) => taken.has(up)));
  const names = own.filter((mark) => mark.kind === 'name');
  if (repeated.length < 2 || !names.some((mark) => mark.heading > 0) || !names.every(isLink) || !isOneLot(own))
    return [];
  const holds = (element: PageElement) => repeated.some((card) => card.roots.some((root) => isWithin(root, element)));
  let root = commonAncestor(own.map((mark) => mark.element));
  if (root === null || holds(root)) return [];
  for (const up of ancestorsOf(root)) {
    if (holds(up)) break;
    root = up;
  }
  return [{ roots: [root], marks: own }];
}

/** A name that is nothing but a link, or stands in one. */
function isLink(mark: LotMark): boolean {
  const leads = (element: PageElement) =>
    element.tag === 'a' && !/^(?:#|javascript:|$)/i.test(attributeOf(element, 'href'));
  const inner = mark.element.children.filter((child) => child.kind === 'element' || /\S/.test(child.text));
  return (
    [mark.element, ...ancestorsOf(mark.element)].some(leads) ||
    (inner.length === 1 && inner[0]?.kind === 'element' && leads(inner[0]))
  );
}

/** A lot outside the repeated parts: then the page is about that one, and they are about others. */
function hasLotOfItsOwn(
  marks: readonly LotMark[],
  inCards: ReadonlySet<PageElement>,
  cards: readonly LotCard[],
): boolean {
  const isInCard = (mark: LotMark) => [mark.element, ...ancestorsOf(mark.element)].some((up) => inCards.has(up));
  const listed = new Set(cards.flatMap((card) => card.marks.map((mark) => mark.key)));
  const outside = marks.filter((mark) => !isInCard(mark) && !mark.prose && !listed.has(mark.key));
  // Several cars outside are no lot that the page is about.
  const vins = new Set(outside.filter((mark) => mark.kind === 'vin').map((mark) => mark.key));
  return vins.size === 1 || outside.some((mark) => mark.heading > 0);
}
