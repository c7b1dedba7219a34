import { attributeOf, elementsWithin, type PageElement, type PageTree } from '../dom/page-tree.ts';
import { anchorKey, labelBeside } from './anchor.ts';
import { atPath } from './element-path.ts';
import type { PointedPlace } from './pointed-place.ts';

export type PlaceFound =
  | { readonly found: true; readonly element: PageElement }
  | { readonly found: false; readonly message: string };

const MOST_SEARCHED = 20_000;

/**
 * Finds a remembered place again. An element counts only while the text beside it is what it was; ways that lead to two
 * such elements with different texts find nothing. Nothing is guessed.
 */
export function findPlace(tree: PageTree, place: PointedPlace): PlaceFound {
  const shown = elementsWithin(tree.root, (element) => element.showing === 'hidden').filter(
    (element) => element.showing === 'shown' && element.tag === place.tag,
  );
  const byId = place.id === undefined ? [] : shown.filter((element) => attributeOf(element, 'id') === place.id);
  const { attribute } = place;
  const byAttribute =
    attribute === undefined ? [] : shown.filter((element) => attributeOf(element, attribute.name) === attribute.value);
  const byPath = atPath(tree.root, place.path).filter((element) => element.showing === 'shown');
  const reached = [byId, byAttribute, byPath].flatMap((matches) => (matches.length === 1 ? matches : []));
  const right = new Set(reached.filter((element) => anchorKey(labelBeside(element)) === place.anchor));
  const byLabel =
    right.size > 0
      ? []
      : shown.slice(0, MOST_SEARCHED).filter((element) => anchorKey(labelBeside(element)) === place.anchor);
  const [first, second] = [...right, ...byLabel];
  if (first !== undefined && second === undefined) return { found: true, element: first };
  return { found: false, message: lostMessage(place, reached, first !== undefined) };
}

function lostMessage(place: PointedPlace, reached: readonly PageElement[], several: boolean): string {
  const was = `"${place.label}"`;
  if (several) return `More than one place on this page is now called ${was}. Point at the right one again.`;
  const now = reached.map(labelBeside).find((label) => label !== '');
  if (now === undefined) return `The place you pointed at, ${was}, is no longer on this page. Point at it again.`;
  return `The place you pointed at was called ${was} and is now called "${now.slice(0, 80)}". Nothing was read from it; point again.`;
}
