import { cleanLine } from '../dom/clean-text.ts';
import { ancestorsOf, attributeOf, briefText, type PageElement, type PageNode } from '../dom/page-tree.ts';
import { labelKey } from '../roles/label-list.ts';

/** The text beside an element that names it, as printed; empty when nothing near it does. */
export function labelBeside(element: PageElement): string {
  const said = attributeOf(element, 'data-label') || attributeOf(element, 'aria-label');
  if (isLabel(said)) return cleanLine(said);
  const own = /^([^:\n]{2,60}):\s*\S/.exec(cleanLine(briefText(element)))?.[1];
  if (own !== undefined && isLabel(own)) return own.trim();
  let node: PageNode = element;
  for (const up of ancestorsOf(element)) {
    const at = up.children.indexOf(node);
    const before = up.children
      .slice(0, at)
      .toReversed()
      .map((child) => cleanLine(briefText(child)))
      .find((text) => text !== '');
    if (before !== undefined) return isLabel(before) ? before : captionUnder(up, node);
    const caption = captionUnder(up, node);
    if (caption !== '') return caption;
    if (node.kind === 'element' && up.depth < element.depth - 4) return '';
    node = up;
  }
  return '';
}

/** A figure with its caption under it: two texts in one box, the second a label. */
function captionUnder(box: PageElement, node: PageNode): string {
  const after = box.children
    .slice(box.children.indexOf(node) + 1)
    .map((child) => cleanLine(briefText(child)))
    .filter((text) => text !== '');
  const [only] = after;
  return after.length === 1 && only !== undefined && isLabel(only) ? only : '';
}

const isLabel = (text: string): boolean => text.length <= 80 && /\p{L}{2}/u.test(text) && !/[$€£]\s?\d/.test(text);

/** A label as it is compared with a remembered one. Counts in it may change ("14 bids"), its words may not. */
export function anchorKey(label: string): string {
  return labelKey(label).replace(/\d+/g, '0').slice(0, 80);
}
