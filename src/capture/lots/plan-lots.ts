import type { PageElement, PageTree } from '../dom/page-tree.ts';
import { ancestorsOf, attributeOf, commonAncestor, isWithin } from '../dom/page-tree.ts';
import { linesOf, type Scope } from '../text/lines.ts';
import { asideParts } from './aside-parts.ts';
import { isOneLot, type LotCard, lotCards } from './lot-cards.ts';
import { type LotMark, lotMarks } from './lot-marks.ts';

/** Which parts of the page speak of which lot. */
export interface LotPlan {
  readonly kind: 'one' | 'many';
  /** For one lot the whole page without what is about others; for many, one scope a lot. */
  readonly scopes: readonly Scope[];
  /** What is said outside the lots of a list, and so perhaps of all of them. */
  readonly around: Scope;
}

/** More marks than this are not weighed: a page of so many lots is cut anyway. */
const MOST_MARKS = 1500;

/**
 * Tells a page about one lot (perhaps with others beside it) from a list. `newest` is the latest model year that can be.
 */
export function planLots(tree: PageTree, newest: number, makes: readonly string[]): LotPlan {
  const asides = asideParts(tree);
  const whole: Scope = { roots: [tree.root], skip: asides };
  const marks = lotMarks(linesOf(whole), newest, makes).slice(0, MOST_MARKS);
  const repeated = lotCards(tree.root, marks).filter((card) => card.roots.every((root) => !asides.has(root)));
  const cards = [...leadingCard(marks, repeated), ...repeated];
  const inCards = new Set(cards.flatMap((card) => card.roots));
  const around: Scope = { roots: [tree.root], skip: new Set([...asides, ...inCards]) };
  if (cards.length < 2 || hasLotOfItsOwn(marks, inCards, cards)) return { kind: 'one', scopes: [around], around };
  return { kind: 'many', scopes: cards.map((card) => ({ roots: card.roots, skip: asides })), around };
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
  const outside = marks.filter((mark) => !isInCard(mark));
  const listed = new Set(cards.flatMap((card) => card.marks.map((mark) => mark.key)));
  const own = outside.filter((mark) => !listed.has(mark.key));
  return own.some((mark) => mark.kind === 'vin' || mark.heading > 0);
}
