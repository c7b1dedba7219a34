import { attributeOf, elementsWithin, type PageElement, type PageTree } from '../dom/page-tree.ts';

/** A page's address without credentials; null unless it is http or https. */
export function pageAddress(url: string): string | null {
  const parsed = URL.parse(url);
  if (parsed === null || !/^https?:$/.test(parsed.protocol)) return null;
  parsed.username = '';
  parsed.password = '';
  return parsed.href.length <= 2000 ? parsed.href : parsed.origin;
}

/** What links of the page are relative to: its `base`. Where that leads to another site, they lead there too. */
export function baseOf(tree: PageTree, pageUrl: string): string {
  const head = elementsWithin(tree.root, (element) => element.tag === 'body');
  const base = head.find((element) => element.tag === 'base' && element.attributes.has('href'));
  const resolved = base === undefined ? null : URL.parse(attributeOf(base, 'href'), pageUrl);
  return resolved?.href ?? pageUrl;
}

/** The one page that the links of a lot's card lead to, on the same site; null when there is none or more than one. */
export function lotLink(roots: readonly PageElement[], pageUrl: string, base: string): string | null {
  const found = new Set<string>();
  for (const root of roots) {
    for (const element of elementsWithin(root, (inner) => inner.showing === 'hidden')) {
      const href = element.tag === 'a' ? attributeOf(element, 'href').trim() : '';
      const target = href === '' || href.startsWith('#') ? null : URL.parse(href, base);
      if (target === null || target.origin !== new URL(pageUrl).origin) continue;
      const address = pageAddress(target.href);
      if (address !== null && address !== pageUrl) found.add(address);
    }
  }
  const [first] = found;
  return first !== undefined && found.size === 1 ? first : null;
}
