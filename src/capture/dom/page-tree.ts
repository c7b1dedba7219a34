/**
 * A page as plain data: frames and open shadow roots put in their place, invisible parts marked, sizes bounded. It is
 * taken once; every reader works on it and none touches the live page.
 */
export interface PageTree {
  readonly root: PageElement;
  readonly title: string;
  readonly lang: string;
  /** Scripts that hold data and are not run, by their MIME type. */
  readonly scripts: readonly DataScript[];
  /** Frames of another site, which can't be read from here. */
  readonly closedFrames: number;
  /** Whether a budget ran out, so that part of the page was not read. */
  readonly cut: boolean;
}

export interface DataScript {
  readonly type: string;
  readonly text: string;
}

/**
 * - `shown`: on screen, or would be after scrolling;
 * - `veiled`: kept for screen readers; may name a value but is never one;
 * - `hidden`: not there for anybody.
 */
export type Showing = 'shown' | 'veiled' | 'hidden';

export interface PageElement {
  readonly kind: 'element';
  readonly tag: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: PageElement | null;
  readonly children: PageNode[];
  readonly showing: Showing;
  /** Flows within a line of text. */
  readonly inline: boolean;
  /** Position in the page; of two nodes the one with the smaller order comes first. */
  readonly order: number;
  readonly depth: number;
  readonly source: Element;
}

export interface PageText {
  readonly kind: 'text';
  /** Blanks run together as on screen; line breaks only where the page keeps those of its source. */
  readonly text: string;
  readonly parent: PageElement;
  readonly order: number;
}

export type PageNode = PageElement | PageText;

export function attributeOf(element: PageElement, name: string): string {
  return element.attributes.get(name) ?? '';
}

/** `element` and everything within, in page order, without what `skip` names. */
export function elementsWithin(element: PageElement, skip?: (element: PageElement) => boolean): readonly PageElement[] {
  const found: PageElement[] = [];
  const waiting: PageElement[] = [element];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (skip?.(next) === true) continue;
    found.push(next);
    for (const child of next.children.toReversed()) if (child.kind === 'element') waiting.push(child);
  }
  return found;
}

export function* ancestorsOf(node: PageNode): Generator<PageElement, void> {
  for (let up = node.parent; up !== null; up = up.parent) yield up;
}

export function isWithin(node: PageNode, outer: PageElement): boolean {
  if (node === outer) return true;
  for (const up of ancestorsOf(node)) if (up === outer) return true;
  return false;
}

/** The closest element that holds every one of `elements`; null when there is none. */
export function commonAncestor(elements: readonly PageElement[]): PageElement | null {
  const [first, ...rest] = elements;
  if (first === undefined) return null;
  let candidate: PageElement | null = first;
  while (candidate !== null && !rest.every((other) => candidate !== null && isWithin(other, candidate))) {
    candidate = candidate.parent;
  }
  return candidate;
}

/** The text of a node; a line break where a block begins or ends. `veiled` text is taken only when asked for. */
export function textOf(node: PageNode, options: { veiled?: boolean } = {}): string {
  const parts: string[] = [];
  gather(node, options.veiled ?? false, parts);
  return parts.join('');
}

const BRIEF = 200;

/** The first two hundred or so characters of a node, veiled text included: enough to tell a label. */
export function briefText(node: PageNode): string {
  let text = '';
  const waiting: PageNode[] = [node];
  for (let next = waiting.pop(); next !== undefined && text.length < BRIEF; next = waiting.pop()) {
    if (next.kind === 'text') text += next.text;
    else if (next.showing !== 'hidden') {
      if (!next.inline) text += ' ';
      waiting.push(...next.children.toReversed());
    }
  }
  return text.slice(0, BRIEF);
}

function gather(node: PageNode, veiled: boolean, parts: string[]): void {
  if (node.kind === 'text') {
    parts.push(node.text);
    return;
  }
  if (node.showing === 'hidden' || (node.showing === 'veiled' && !veiled)) return;
  if (node.tag === 'br' || !node.inline) parts.push('\n');
  for (const child of node.children) gather(child, veiled, parts);
  if (!node.inline) parts.push('\n');
}
