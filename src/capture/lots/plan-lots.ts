import type { PageElement, PageTree } from '../dom/page-tree.ts';
import { ancestorsOf } from '../dom/page-tree.ts';
import { linesOf, type Scope } from '../text/lines.ts';
import { asideParts } from './aside-parts.ts';
import { type LotCard, lotCards } from './lot-cards.ts';
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
  const cards = lotCards(tree.root, marks).filter((card) => card.roots.every((root) => !asides.has(root)));
  const inCards = new Set(cards.flatMap((card) => card.roots));
  const around: Scope = { roots: [tree.root], skip: new Set([...asides, ...inCards]) };
  if (cards.length < 2 || hasLotOfItsOwn(marks, inCards, cards)) return { kind: 'one', scopes: [around], around };
  return { kind: 'many', scopes: cards.map((card) => ({ roots: card.roots, skip: asides })), around };
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
