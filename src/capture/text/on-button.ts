import { ancestorsOf, type PageNode } from '../dom/page-tree.ts';

/** Whether a text stands on something to press. */
export function isOnButton(node: PageNode | null): boolean {
  if (node === null) return false;
  let steps = 0;
  for (const up of [node, ...ancestorsOf(node)]) {
    if (steps++ > 6) return false;
    if (up.kind !== 'element') continue;
    // A link that leads nowhere but to this page is one to press.
    if (up.tag === 'a' && /^(?:#|javascript:)/i.test(up.attributes.get('href') ?? '')) return true;
    if (up.tag === 'button' || up.attributes.get('role') === 'button') return true;
    if (up.tag === 'input' && /^(?:submit|button)$/i.test(up.attributes.get('type') ?? '')) return true;
  }
  return false;
}
