import type { PointedPlace } from '../../domain/setup/site.ts';
import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, elementsWithin, type PageElement, type PageTree, textOf } from '../dom/page-tree.ts';
import { anchorKey, labelBeside } from './anchor.ts';
import { atPath } from './element-path.ts';

export type PlaceFound =
  | { readonly found: true; readonly element: PageElement }
  | { readonly found: false; readonly message: string };

const MOST_SEARCHED = 20_000;

/**
 * Finds a remembered place again. An element counts only while the text beside it is what it was. Where several on the
 * page are called so and say different things, only an id or attribute that one of them alone has can tell them apart;
 * that one stands where the other stood can't. Nothing is guessed.
 * @param aside parts of the page that are about other lots
 */
export function findPlace(tree: PageTree, place: PointedPlace, aside: ReadonlySet<PageElement>): PlaceFound {
  const shown = elementsWithin(tree.root, (element) => element.showing === 'hidden' || aside.has(element)).filter(
    (element) => element.showing === 'shown' && element.tag === place.tag,
  );
  const { id, attribute } = place;
  const byName = [
    id === undefined ? [] : shown.filter((element) => attributeOf(element, 'id') === id),
    attribute === undefined ? [] : shown.filter((element) => attributeOf(element, attribute.name) === attribute.value),
  ].flatMap((matches) => (matches.length === 1 ? matches : []));
  const isRight = (element: PageElement) => anchorKey(labelBeside(element)) === place.anchor;
  const named = byName.filter(isRight);
  const right = named.length > 0 ? named : shown.slice(0, MOST_SEARCHED).filter(isRight);
  const [first] = right;
  const said = new Set(right.map((element) => cleanLine(textOf(element))));
  if (first !== undefined && said.size === 1) return { found: true, element: first };
  const reached = [...byName, ...atPath(tree.root, place.path).filter((element) => element.showing === 'shown')];
  return { found: false, message: lostMessage(place, reached, first !== undefined) };
}

function lostMessage(place: PointedPlace, reached: readonly PageElement[], several: boolean): string {
  const was = `"${place.label}"`;
  if (several) return `More than one place on this page is now called ${was}. Point at the right one again.`;
  const now = reached.map(labelBeside).find((label) => label !== '');
  if (now === undefined) return `The place you pointed at, ${was}, is no longer on this page. Point at it again.`;
  return `The place you pointed at was called ${was} and is now called "${now.slice(0, 80)}". Nothing was read from it; point again.`;
}
