import { boxOf } from './element-under.ts';

/** More elements than this are not walked for one press of a key. */
const MOST_WALKED = 120_000;

/**
 * The next or previous element that holds text of its own, for pointing without a mouse; through open shadow roots and
 * frames of the same site, as the mouse goes. It begins at the main heading, or else at the first text in the window.
 */
export function step(document: Document, from: Element | null, forward: boolean): Element | null {
  const all = textsIn(document);
  if (from !== null) return all[all.indexOf(from) + (forward ? 1 : -1)] ?? from;
  const heading = all.find((element) => element.closest('h1') !== null);
  return heading ?? all.find((element) => boxOf(element).top >= 0) ?? all[0] ?? null;
}

function textsIn(document: Document): readonly Element[] {
  const found: Element[] = [];
  const waiting: Element[] = [document.body];
  for (
    let next = waiting.pop(), walked = 0;
    next !== undefined && walked < MOST_WALKED;
    next = waiting.pop(), walked++
  ) {
    if (holdsText(next)) found.push(next);
    waiting.push(...within(next).toReversed());
  }
  return found;
}

/** What is laid out directly inside: a shadow tree with its slots filled, a frame's page, or plain children. */
function within(element: Element): readonly Element[] {
  const frame = element.localName === 'iframe' ? (element as HTMLIFrameElement).contentDocument?.body : null;
  if (frame !== null && frame !== undefined) return [frame];
  const assigned = element.localName === 'slot' ? (element as HTMLSlotElement).assignedElements() : [];
  return assigned.length > 0 ? assigned : [...(element.shadowRoot ?? element).children];
}

function holdsText(element: Element): boolean {
  if (/^(?:script|style|noscript)$/.test(element.localName) || element.getClientRects().length === 0) return false;
  return [...element.childNodes].some((node) => node.nodeType === 3 && (node.textContent ?? '').trim() !== '');
}
