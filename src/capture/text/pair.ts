import type { PageElement, PageNode } from '../dom/page-tree.ts';
import type { ReadFrom } from '../draft/draft-lot.ts';

/** A value and the label that names it, whether the label is known or not. */
export interface Pair {
  readonly label: string;
  readonly value: string;
  /** What follows the value on the same line, for a unit that stands apart: `<b>72,431</b> km`. */
  readonly after: string;
  /** The element or text that holds the value; null when it comes from a script. */
  readonly node: PageNode | null;
  /**
   * A cell beside its label or under the head of its column, a figure over its caption, the label in an attribute, the rest
   * of a line after a colon, a figure right behind a known word (`run-on`), or an attribute made for programs (`data`).
   */
  readonly how: 'cell' | 'head' | 'caption' | 'attribute' | 'colon' | 'run-on' | 'data';
  readonly prose: boolean;
  readonly from: ReadFrom;
}

/** What a pair is cited as. */
export function pairText({ label, value, after }: Pair): string {
  const name = label.replace(/\s*:$/, '');
  return `${name === '' ? '' : `${name}: `}${value}${after === '' ? '' : ` ${after}`}`;
}

/** The element that a pair's value stands in. */
export function elementOf(node: PageNode | null): PageElement | null {
  return node === null ? null : node.kind === 'element' ? node : node.parent;
}
