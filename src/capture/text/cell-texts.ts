import { cleanText } from '../dom/clean-text.ts';
import type { PageNode } from '../dom/page-tree.ts';
import { LABEL_LENGTH } from '../roles/label-list.ts';
import { isPassedOver, type Scope } from './lines.ts';

/** The longest value that is taken whole. */
export const VALUE_LENGTH = 2000;

/** Texts of nodes, each gathered once from those within it, and never longer than a value may be. */
export class CellTexts {
  private readonly raw = new Map<PageNode, string>();
  private readonly rawSaid = new Map<PageNode, string>();
  private readonly scope: Scope;

  constructor(scope: Scope) {
    this.scope = scope;
  }

  /** What one sees. */
  shown(node: PageNode): string {
    return cleanText(this.gather(node, this.raw, false));
  }

  /** What one sees or a screen reader says, if it is short enough for a label; else empty. */
  label(node: PageNode): string {
    const text = this.gather(node, this.rawSaid, true);
    return text.length > LABEL_LENGTH * 4 ? '' : cleanText(text);
  }

  isEmpty(node: PageNode): boolean {
    return !/\S/.test(this.gather(node, this.rawSaid, true));
  }

  private gather(node: PageNode, cache: Map<PageNode, string>, veiled: boolean): string {
    if (node.kind === 'text') return node.text.slice(0, VALUE_LENGTH * 2);
    if (isPassedOver(node, this.scope) || (node.showing === 'veiled' && !veiled)) return '';
    const before = cache.get(node);
    if (before !== undefined) return before;
    let text = '';
    for (const child of node.children) {
      if (text.length >= VALUE_LENGTH * 2) break;
      text += this.gather(child, cache, veiled);
    }
    if (node.tag === 'br') text = '\n';
    else if (!node.inline) text = `\n${text}\n`;
    // Cents set small and high must not grow into the dollars.
    else if (node.tag === 'sup' || node.tag === 'sub') text = ` ${text}`;
    cache.set(node, text);
    return text;
  }
}
