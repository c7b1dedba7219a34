import { cleanLine } from '../dom/clean-text.ts';
import { ancestorsOf, attributeOf, type PageElement, textOf } from '../dom/page-tree.ts';
import { isFurniture } from '../text/lines.ts';

/** What the page's makers call a box for the name of a sale. */
const SALE_BOX = /\b(?:evt|event|sale|auction|session)(?:-?(?:name|title|label))?\b/i;

export const isSaleBox = (element: PageElement): boolean => SALE_BOX.test(namesOf(element));

const namesOf = (element: PageElement): string =>
  `${attributeOf(element, 'class')} ${attributeOf(element, 'id')}`.replace(/[_-]+/g, '-');

/** Whether the part before it in the same box is the site's own name. */
export function followsBrand(element: PageElement): boolean {
  const siblings = element.parent?.children.filter((child): child is PageElement => child.kind === 'element') ?? [];
  const before = siblings[siblings.indexOf(element) - 1];
  return before !== undefined && isBrand(before);
}

/** What stands in boxes of its own within a line: a name, and beside it the sale. */
export function boxesOf(element: PageElement, text: string): readonly string[] {
  const boxes = childrenInWords(element);
  // All that stands in an element is looked at for each of its lines: most differ in their length already.
  const letters = text.replace(/\s/g, '');
  const whole =
    boxes.length >= 2 && lengthOf(boxes) === letters.length && boxes.join('').replace(/\s/g, '') === letters;
  return whole && boxes.every((box) => /^[^\p{L}\p{N}]+$/u.test(box) || /^\p{Lu}/u.test(box)) ? boxes : [text];
}

const known = new WeakMap<PageElement, readonly string[]>();
const lengths = new WeakMap<readonly string[], number>();

/** What stands in each child, worked out once for all the lines of an element. */
function childrenInWords(element: PageElement): readonly string[] {
  const boxes =
    known.get(element) ??
    element.children
      .map((child) => cleanLine(child.kind === 'text' ? child.text : textOf(child)))
      .filter((box) => box !== '');
  known.set(element, boxes);
  return boxes;
}

/** How many letters they have, blanks not counted. */
function lengthOf(boxes: readonly string[]): number {
  const length = lengths.get(boxes) ?? boxes.reduce((sum, box) => sum + box.replace(/\s/g, '').length, 0);
  lengths.set(boxes, length);
  return length;
}

export const isInHead = (element: PageElement): boolean =>
  [element, ...ancestorsOf(element)].some((up) => up.tag === 'header' || attributeOf(up, 'role') === 'banner');

export const isNavigation = (element: PageElement): boolean =>
  [element, ...ancestorsOf(element)].some(
    (up) => up.tag === 'nav' || (isFurniture(up) && up.tag !== 'footer' && attributeOf(up, 'role') !== 'banner'),
  );

/** The trail from the front page to this one: it leads through the sale. Called so, or links with marks between from the start. */
export const isCrumbs = (element: PageElement, text: string): boolean =>
  FROM_THE_START.test(text) ||
  [element, ...ancestorsOf(element)].some((up) =>
    /\b(?:bread-?crumbs?|crumbs?|trail|fil(?:-d-?ariane)?|ruta|migas)\b/i.test(
      `${namesOf(up)} ${attributeOf(up, 'aria-label')}`,
    ),
  );

const FROM_THE_START =
  /^(?:home|start|main|all sales|sales|auctions|events|catalog(?:ue)?|calendar|accueil|ventes|encans|inicio|subastas|eventos|startseite|auktionen) ?[/›»>→\\] ?\S/i;

/** An element that is called so, or the link to the site's own front page at its head. */
export function isBrand(element: PageElement): boolean {
  const inner = [element, ...element.children.filter((child): child is PageElement => child.kind === 'element')];
  return inner.some((one) => {
    if (/\b(?:brand|logo|masthead|site-?(?:name|title)|wordmark)\b/i.test(namesOf(one))) return true;
    return one.tag === 'a' && /^(?:\/|\.\/|https?:\/\/[^/]+\/?)$/.test(attributeOf(one, 'href'));
  });
}
