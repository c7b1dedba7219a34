import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, type PageElement } from '../dom/page-tree.ts';
import type { Line } from './lines.ts';

/** Elements that stand within a line: what is said for them goes on from what is before. */
const SHORT_FOR: ReadonlySet<string> = new Set(['abbr', 'time', 'span', 'data', 'b', 'strong', 'i', 'em']);

/** What stands before it in the same box: `Ends` before a time that is only said. */
function wordsBefore(element: PageElement, shown: (element: PageElement) => string): string {
  const siblings = element.parent?.children ?? [];
  const before = siblings
    .slice(0, siblings.indexOf(element))
    .map((one) => (one.kind === 'text' ? one.text : shown(one)));
  return cleanLine(before.join(' ')).slice(-40);
}

/**
 * What a part of the page is called for those who can't see it, where that says more than its own words: the whole of a
 * headline that is cut short, the exact figure of a rounded one.
 */
export function spokenLines(
  elements: readonly PageElement[],
  shown: (element: PageElement) => string,
): readonly Line[] {
  return elements.flatMap((element): readonly Line[] => {
    const label = cleanLine(
      attributeOf(element, 'aria-label') || (element.tag === 'abbr' ? attributeOf(element, 'title') : ''),
    );
    if (label.length < 5 || label.length > 160 || !/\d/.test(label) || element.tag === 'a') return [];
    if (shown(element).includes(label)) return [];
    const heading = Number(/^h([1-6])$/.exec(element.tag)?.[1] ?? 0);
    const text = heading > 0 || !SHORT_FOR.has(element.tag) ? label : `${wordsBefore(element, shown)} ${label}`.trim();
    return [{ text, element, order: element.order, heading, prose: false, spoken: true }];
  });
}
