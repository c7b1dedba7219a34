import type { PointedPlace } from '../../domain/setup/site.ts';
import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, elementsWithin, type PageElement, textOf } from '../dom/page-tree.ts';
import { anchorKey, labelBeside } from './anchor.ts';
import { atPath } from './element-path.ts';

/** `several` are called so and say different things: which of them is meant is the user's to say. */
export type PlaceFound =
  | { readonly found: 'one'; readonly element: PageElement }
  | { readonly found: 'several'; readonly elements: readonly PageElement[] }
  | { readonly found: 'none'; readonly message: string };

const MOST_SEARCHED = 20_000;

/** Where a place is looked for. */
export interface Ground {
  readonly root: PageElement;
  /** The parts of the page that are about the lot. */
  readonly within: readonly PageElement[];
  /** Parts of these that are about other lots. */
  readonly aside: ReadonlySet<PageElement>;
}

/**
 * Finds a remembered place again. An element counts only while the text that names it is what it was. Where several on
 * the page are called so and say different things, only an id or attribute that one of them alone has can tell them apart;
 * that one stands where the other stood can't. Nothing is guessed. When the page was built anew with other tags, what is
 * called so counts, whatever its tag, where only one thing is said under that name.
 */
export function findPlace(ground: Ground, place: PointedPlace): PlaceFound {
  const all = ground.within
    .flatMap((root) => elementsWithin(root, (element) => element.showing === 'hidden' || ground.aside.has(element)))
    .filter((element) => element.showing === 'shown');
  const shown = all.filter((element) => element.tag === place.tag);
  const { id, attribute, field } = place;
  const byName = [
    id === undefined ? [] : shown.filter((element) => attributeOf(element, 'id') === id),
    attribute === undefined ? [] : shown.filter((element) => attributeOf(element, attribute.name) === attribute.value),
  ].flatMap((matches) => (matches.length === 1 ? matches : []));
  const anchor = anchorKey(place.anchor);
  const isRight = (element: PageElement) => anchorKey(labelBeside(element, field)) === anchor;
  const named = byName.filter(isRight);
  const right = named.length > 0 ? named : shown.slice(0, MOST_SEARCHED).filter(isRight);
  const found = right.length > 0 ? right : innermost(all.slice(0, MOST_SEARCHED).filter(isRight));
  const bySaid = new Map(found.map((element) => [cleanLine(textOf(element)), element]));
  const [first, ...rest] = bySaid.values();
  if (first !== undefined && rest.length === 0) return { found: 'one', element: first };
  if (first !== undefined) return { found: 'several', elements: [...bySaid.values()] };
  const reached = [...byName, ...atPath(ground.root, place.path).filter((element) => element.showing === 'shown')];
  return { found: 'none', message: lostMessage(place, reached) };
}

/** Of elements within each other, those that hold no other. */
function innermost(elements: readonly PageElement[]): readonly PageElement[] {
  const outer = new Set<PageElement>();
  for (const element of elements) {
    for (let up = element.parent; up !== null && !outer.has(up); up = up.parent) outer.add(up);
  }
  return elements.filter((element) => !outer.has(element));
}

function lostMessage(place: PointedPlace, reached: readonly PageElement[]): string {
  const was = `"${place.label}"`;
  const now = reached.map((element) => labelBeside(element, place.field)).find((label) => label !== '');
  if (now !== undefined && anchorKey(now) === anchorKey(place.anchor)) {
    return `${was} stands in a part of this page that is about another lot. Nothing was read from it.`;
  }
  if (now === undefined) return `The place you pointed at, ${was}, is no longer on this page. Point at it again.`;
  return `The place you pointed at was called ${was} and is now called "${now.slice(0, 80)}". Nothing was read from it; point again.`;
}
