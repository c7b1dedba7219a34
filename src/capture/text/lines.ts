import { cleanText } from '../dom/clean-text.ts';
import type { PageElement, PageNode } from '../dom/page-tree.ts';

/** A part of the page that is read for one lot, without the parts that belong to something else. */
export interface Scope {
  readonly roots: readonly PageElement[];
  readonly skip: ReadonlySet<PageElement>;
  /** Menus, heads and feet of the page count too. */
  readonly furniture?: boolean;
}

/** One line of text as it stands on the page. */
export interface Line {
  readonly text: string;
  /** The block that the line is in. */
  readonly element: PageElement;
  readonly order: number;
  /** 1 to 6 for a heading, 0 for anything else. */
  readonly heading: number;
  /** Part of running text rather than a fact on its own: such text is anybody's, and is believed less. */
  readonly prose: boolean;
  /** It is not seen but said to those who can't see: it says more than what stands there. */
  readonly spoken?: boolean;
}

/** Parts of any page that speak of the site and not of the lot. */
const FURNITURE: ReadonlySet<string> = new Set(['nav', 'footer']);
const FURNITURE_ROLES: ReadonlySet<string> = new Set([
  'navigation',
  'search',
  'contentinfo',
  'menu',
  'menubar',
  'banner',
]);

export function isFurniture(element: PageElement): boolean {
  return FURNITURE.has(element.tag) || FURNITURE_ROLES.has(element.attributes.get('role') ?? '');
}

/** Whether readers pass over this element and what is in it. */
export function isPassedOver(element: PageElement, scope: Scope): boolean {
  return element.showing === 'hidden' || scope.skip.has(element) || (scope.furniture !== true && isFurniture(element));
}

/** The lines of a scope in page order; veiled text is not among them. */
export function linesOf(scope: Scope): readonly Line[] {
  const lines: Line[] = [];
  const waiting: PageElement[] = scope.roots.toReversed();
  for (let block = waiting.pop(); block !== undefined; block = waiting.pop()) {
    const inner: PageElement[] = [];
    linesIn(block, scope, lines, inner);
    waiting.push(...inner.toReversed());
  }
  return lines.sort((a, b) => a.order - b.order);
}

function linesIn(block: PageElement, scope: Scope, lines: Line[], inner: PageElement[]): void {
  let run = '';
  let order = block.order;
  const flush = () => {
    for (const text of cleanText(run).split('\n')) {
      if (text === '') continue;
      lines.push({ text, element: block, order, heading: headingLevel(block), prose: isProse(text) });
    }
    run = '';
  };
  const take = (node: PageNode): void => {
    if (node.kind === 'text') {
      if (run === '') order = node.order;
      run += needsBlank(run, node.text) ? ` ${node.text}` : node.text;
    } else if (node.showing !== 'shown' || isPassedOver(node, scope)) {
      return;
    } else if (node.tag === 'br') {
      run += '\n';
    } else if (node.inline && !holdsBlocks(node)) {
      // Cents set small and high must not grow into the dollars.
      if (node.tag === 'sup' || node.tag === 'sub') run += ' ';
      for (const child of node.children) take(child);
    } else {
      flush();
      inner.push(node);
    }
  };
  if (block.showing === 'shown') for (const child of block.children) take(child);
  flush();
}

const blocksWithin = new WeakMap<PageElement, boolean>();

/** A box of its own to the eye, though its tag flows in a line: an element of the page's own making with blocks in it. */
function holdsBlocks(element: PageElement): boolean {
  const known = blocksWithin.get(element);
  if (known !== undefined) return known;
  const holds = element.children.some(
    (child) =>
      child.kind === 'element' &&
      child.showing === 'shown' &&
      (!child.inline || holdsBlocks(child)) &&
      child.tag !== 'br',
  );
  blocksWithin.set(element, holds);
  return holds;
}

/** Words that only their boxes keep apart on screen: `427` and `Live`, `Sold by` and `Yellow Pine`. */
const needsBlank = (before: string, next: string): boolean =>
  (/[\p{Ll}\d]$/u.test(before) && /^\p{Lu}\p{Ll}/u.test(next)) ||
  (/\p{L} \d+$/u.test(before) && /^\d+ \p{Ll}{3}/u.test(next)) ||
  (/\p{L}$/u.test(before) && /^\$ ?\d/.test(next));

/** 1 to 6 for a heading, 0 for anything else. */
export function headingLevel(block: PageElement): number {
  const level = /^h([1-6])$/.exec(block.tag)?.[1];
  if (level !== undefined) return Number(level);
  if (block.attributes.get('role') !== 'heading') return 0;
  const said = Number(block.attributes.get('aria-level') ?? '2');
  return said >= 1 && said <= 6 ? said : 2;
}

/** Long lines, and lines of several sentences. */
function isProse(text: string): boolean {
  const sentence = /[\p{L}\d][.!?]$/u.test(text) && text.split(' ').length >= 10;
  return sentence || text.length > 160 || /[\p{Ll}\d%)]{2}[.!?] \p{Lu}\p{Ll}/u.test(text);
}
