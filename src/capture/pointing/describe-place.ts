import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { cleanLine, shorten } from '../dom/clean-text.ts';
import { ancestorsOf, type PageElement, textOf } from '../dom/page-tree.ts';
import type { DraftFieldName } from '../draft/draft-lot.ts';
import { anchorKey, labelBeside } from './anchor.ts';
import { isMadeByHand, pathOf, stableId } from './element-path.ts';

/**
 * Describes an element so that it can be found again on other pages of the same site. Refused when no text beside it
 * names it: without that, nobody could tell later whether the place still means the same.
 */
export function describePlace(
  element: PageElement,
  about: { readonly field: DraftFieldName; readonly site: string; readonly at: Instant },
): Outcome<PointedPlace> {
  const label = shorten(labelBeside(element, about.field), 80);
  const anchor = anchorKey(label);
  if (anchor === '' || element.showing !== 'shown') {
    const message = 'There is no label beside it. Point at the value right next to its label, or type it in.';
    return refuse('no-label', message);
  }
  const id = stableId(element);
  const attribute = stableAttribute(element);
  const place: PointedPlace = {
    ...about,
    anchor,
    label,
    tag: element.tag,
    ...(id === '' ? {} : { id }),
    ...(attribute === null ? {} : { attribute }),
    path: pathOf(element),
    sample: shorten(cleanLine(textOf(element)), 200),
  };
  return place.path.length <= 1000 && /^[a-z][a-z0-9-]{0,40}$/.test(place.tag)
    ? ok(place)
    : refuse('too-deep', 'This part of the page is nested too deep to find again. Type the value in instead.');
}

function stableAttribute(element: PageElement): PointedPlace['attribute'] | null {
  for (const [name, value] of element.attributes) {
    const names = name === 'itemprop' || name === 'name' || /^data-[a-z-]{1,50}$/.test(name);
    if (names && isMadeByHand(value)) return { name, value };
  }
  return null;
}

/** The element of the snapshot that stands for a live one, or for the closest that the snapshot has. */
export function elementFor(source: Element, root: PageElement): PageElement | null {
  const bySource = new Map<Element, PageElement>();
  const waiting = [root];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    bySource.set(next.source, next);
    for (const child of next.children) if (child.kind === 'element') waiting.push(child);
  }
  for (let at: Element | null = source; at !== null; at = at.parentElement) {
    const found = bySource.get(at);
    if (found !== undefined) return [found, ...ancestorsOf(found)].find((one) => one.showing === 'shown') ?? null;
  }
  return null;
}
