import { attributeOf, elementsWithin, type PageTree } from '../dom/page-tree.ts';
import { cleanLine } from '../text/clean-text.ts';

/** What a page says of itself in `meta` elements (Open Graph protocol), by property; the first of each counts. */
export function readOpenGraph(tree: PageTree): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const element of elementsWithin(tree.root, (inner) => inner.tag === 'body')) {
    if (element.tag !== 'meta') continue;
    const property = attributeOf(element, 'property') || attributeOf(element, 'name');
    const content = cleanLine(attributeOf(element, 'content'));
    if (!/^(?:og|product|article):[a-z_:]{1,60}$/.test(property) || content === '') continue;
    if (!found.has(property)) found.set(property, content.slice(0, 500));
  }
  return found;
}
