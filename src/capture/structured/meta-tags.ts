import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, elementsWithin, type PageTree } from '../dom/page-tree.ts';

/** What a page says of itself in `meta` elements, by property in lower case; the first of each counts. */
export function readMeta(tree: PageTree): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const element of elementsWithin(tree.root, (inner) => inner.tag === 'body')) {
    if (element.tag !== 'meta') continue;
    const property = (attributeOf(element, 'property') || attributeOf(element, 'name')).toLowerCase();
    const content = cleanLine(attributeOf(element, 'content'));
    if (!/^[a-z][a-z0-9_:.-]{1,60}$/.test(property) || content === '' || found.size > 200) continue;
    if (!found.has(property)) found.set(property, content.slice(0, 600));
  }
  return found;
}
