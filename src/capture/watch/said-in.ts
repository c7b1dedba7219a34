import type { PageNode } from '../dom/page-tree.ts';
import { type SafeDom, TEXT_NODE } from '../dom/safe-dom.ts';

const MOST_TEXTS = 300;

/** The texts of the live page, within what `node` was taken from, that say `value` or a part of it; letters and digits count. */
export function saidIn(node: PageNode, value: string, dom: SafeDom): readonly Node[] {
  const wanted = bare(value);
  return textsIn(node, dom).filter((text) => {
    const said = bare(dom.value(text));
    return said !== '' && (said.includes(wanted) || wanted.includes(said));
  });
}

/** The same for a moment, which can be worded in many ways: every text there with a figure in it. */
export function figuresIn(node: PageNode, dom: SafeDom): readonly Node[] {
  return textsIn(node, dom).filter((text) => /\d/.test(dom.value(text)));
}

function textsIn(node: PageNode, dom: SafeDom): readonly Node[] {
  const found: Node[] = [];
  const waiting: Node[] = [node.kind === 'element' ? node.source : node.parent.source];
  for (let next = waiting.pop(); next !== undefined && found.length < MOST_TEXTS; next = waiting.pop()) {
    if (dom.type(next) === TEXT_NODE) found.push(next);
    for (let child = dom.firstChild(next); child !== null; child = dom.nextSibling(child)) waiting.push(child);
  }
  return found;
}

const bare = (text: string): string => text.toUpperCase().replace(/[^A-Z0-9]/g, '');
