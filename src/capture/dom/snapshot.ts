import { BUDGET, type Budget } from '../budget.ts';
import { cleanLine } from './clean-text.ts';
import { NEVER_SHOWN, type Sight, sightOf, UNSTYLED } from './hiding.ts';
import { INLINE_TAGS } from './inline-tags.ts';
import type { DataScript, PageElement, PageTree, Showing } from './page-tree.ts';
import { type Block, blocksOf } from './preformatted.ts';
import { ELEMENT_NODE, type SafeDom, safeDom, TEXT_NODE } from './safe-dom.ts';

const LEADER = /^\s*(?:[.·…_]\s?){5,}$/;

/** Copies what `document` shows into plain data, within `budget`. */
export function snapshot(document: Document, budget: Budget = BUDGET): PageTree {
  return new Snapshot(safeDom(document), budget).take(document);
}

const SHOWN_TYPES: ReadonlySet<string> = new Set([
  'text',
  'number',
  'tel',
  'date',
  'time',
  'datetime-local',
  'search',
  'url',
]);
const BUTTONS: ReadonlySet<string> = new Set(['button', 'summary']);

interface Open {
  readonly element: PageElement;
  readonly view: Window | null;
  readonly background: string;
  readonly preserves: boolean;
  readonly nodes: readonly Node[];
  next: number;
}

class Snapshot {
  private readonly dom: SafeDom;
  private readonly left: { elements: number; text: number; frames: number; scripts: number };
  private readonly budget: Budget;
  private readonly scripts: DataScript[] = [];
  private order = 0;
  private closedFrames = 0;
  private cut = false;
  private title = '';

  constructor(dom: SafeDom, budget: Budget) {
    this.dom = dom;
    this.budget = budget;
    this.left = { elements: budget.elements, text: budget.text, frames: budget.frames, scripts: budget.scripts };
  }

  take(document: Document): PageTree {
    const source = this.dom.root(document);
    if (source === null) throw new RangeError('a document without an element can not be read');
    const view = this.dom.view(document);
    const root = this.copy(source, null, { ...UNSTYLED, inline: false });
    const open: Open[] = [
      { element: root, view, background: '', preserves: false, nodes: this.childrenOf(source), next: 0 },
    ];
    // A stack of its own: a page nested a hundred thousand deep must not overflow the engine's.
    for (let top = open.at(-1); top !== undefined; top = open.at(-1)) {
      const node = top.nodes[top.next++];
      if (node === undefined) open.pop();
      else if (this.dom.type(node) === TEXT_NODE) this.text(node, top);
      else if (this.dom.type(node) === ELEMENT_NODE) this.element(node as Element, top, open);
    }
    const { scripts, closedFrames, cut, title } = this;
    return { root, title, lang: root.attributes.get('lang') ?? '', scripts, closedFrames, cut };
  }

  private text(node: Node, { element: parent, preserves }: Open): void {
    const source = this.dom.value(node).slice(0, this.budget.run);
    if (this.left.text < source.length) {
      this.cut = true;
      return;
    }
    this.left.text -= source.length;
    if (preserves && /\n|\S {3,}\S/.test(source)) {
      for (const block of blocksOf(source)) this.block(block, parent);
      return;
    }
    const text = source.replace(/(?<=\S)\t+(?=\S)/g, ': ').replace(/\s+/g, ' ');
    if (parent.tag === 'title' && this.title === '') this.title = cleanLine(text).slice(0, 300);
    // What is set apart by color or weight alone has no blank around it, and a VIN is no part of a word.
    const apart = /^[A-HJ-NPR-Z0-9]{17}$/.test(text.trim()) ? ` ${text} ` : text;
    // Dots that lead the eye to a value say nothing themselves.
    this.addText(LEADER.test(text) ? ' ' : apart, parent);
  }

  private addText(text: string, parent: PageElement): void {
    parent.children.push({ kind: 'text', text, parent, order: this.order++ });
  }

  /** Columns that are only set with blanks are read as the table that they look like. */
  private block(block: Block, parent: PageElement): void {
    if (block.kind === 'line') {
      for (const part of block.parts) this.addText(part, this.made('div', parent));
      return;
    }
    const table = this.made('table', parent);
    for (const row of block.rows) {
      const line = this.made('tr', table);
      for (const cell of row) {
        const box = this.made('td', line);
        if (cell !== '') this.addText(cell, box);
      }
    }
  }

  /** An element that the page does not have, for a part of the text of one that it has. */
  private made(tag: string, parent: PageElement): PageElement {
    this.left.elements--;
    const { showing, source, depth } = parent;
    const element: PageElement = {
      kind: 'element',
      tag,
      attributes: new Map(),
      parent,
      children: [],
      showing,
      inline: false,
      order: this.order++,
      depth: depth + 1,
      source,
    };
    parent.children.push(element);
    return element;
  }

  private element(source: Element, top: Open, open: Open[]): void {
    const tag = this.dom.tag(source);
    if (tag === 'script') {
      this.script(source);
      return;
    }
    if (NEVER_SHOWN.has(tag)) return;
    if (this.left.elements <= 0 || open.length >= this.budget.depth) {
      this.cut = true;
      return;
    }
    this.left.elements--;
    // What is inside something hidden is hidden too; asking for its style again would only cost time.
    const sight: Sight =
      top.element.showing === 'hidden'
        ? { ...UNSTYLED, gone: true, background: top.background }
        : sightOf(source, this.dom, top.view, top.background);
    const element = this.copy(source, top.element, sight);
    top.element.children.push(element);
    if (tag === 'input' || tag === 'select') {
      this.input(source, element);
      return;
    }
    let view = top.view;
    let nodes: readonly Node[];
    if (tag === 'iframe' || tag === 'frame') {
      const inner = element.showing === 'hidden' ? null : this.frame(source);
      if (inner === null) return;
      view = inner.view;
      nodes = [inner.root];
    } else nodes = this.childrenOf(source);
    const preserves = sight.preserves || tag === 'pre';
    open.push({ element, view, background: sight.background, preserves, nodes, next: 0 });
  }

  private frame(source: Element): { root: Element; view: Window | null } | null {
    const inner = this.dom.frame(source);
    const root = inner === null ? null : this.dom.root(inner);
    if (inner === null || root === null) {
      this.closedFrames++;
      return null;
    }
    if (this.left.frames-- <= 0) {
      this.cut = true;
      return null;
    }
    return { root, view: this.dom.view(inner) };
  }

  /** A field that the user can't type in shows a value like any text; one that he can type in is his own. */
  private input(source: Element, element: PageElement): void {
    const type = (element.attributes.get('type') ?? 'text').toLowerCase();
    const fixed = element.attributes.has('readonly') || element.attributes.has('disabled');
    const isButton = type === 'submit' || type === 'button';
    if (!isButton && !(fixed && (element.tag === 'select' || SHOWN_TYPES.has(type)))) return;
    const shown = element.tag === 'select' ? this.dom.chosen(source) : this.dom.shownValue(source);
    const text = (isButton ? (element.attributes.get('value') ?? '') : shown).slice(0, this.budget.run);
    if (text !== '') element.children.push({ kind: 'text', text, parent: element, order: this.order++ });
  }

  private script(source: Element): void {
    const type = (this.dom.attribute(source, 'type') ?? '').toLowerCase().split(';')[0]?.trim() ?? '';
    if (type !== 'application/ld+json' && type !== 'application/json') return;
    let text = '';
    for (let node = this.dom.firstChild(source); node !== null; node = this.dom.nextSibling(node)) {
      text += this.dom.value(node);
    }
    if (text.length > this.budget.script || this.left.scripts-- <= 0) this.cut = true;
    else this.scripts.push({ type, text });
  }

  /** What is laid out inside `source`: its shadow tree if it has an open one, with slots filled. */
  private childrenOf(source: Element): readonly Node[] {
    const nodes: Node[] = [];
    const shadow = this.dom.shadow(source);
    const assigned = this.dom.tag(source) === 'slot' ? (source as HTMLSlotElement).assignedNodes() : [];
    if (assigned.length > 0) return assigned;
    for (let node = this.dom.firstChild(shadow ?? source); node !== null; node = this.dom.nextSibling(node)) {
      nodes.push(node);
      if (nodes.length > this.budget.elements) break;
    }
    return nodes;
  }

  private copy(source: Element, parent: PageElement | null, sight: Sight): PageElement {
    const tag = this.dom.tag(source);
    const attributes = new Map<string, string>();
    for (const name of this.dom.attributeNames(source).slice(0, this.budget.attributes)) {
      const value = (this.dom.attribute(source, name) ?? '').slice(0, 2000);
      if (this.left.text < value.length) {
        this.cut = true;
        break;
      }
      this.left.text -= value.length;
      attributes.set(name.toLowerCase(), value);
    }
    const type = attributes.get('type')?.toLowerCase();
    const isButton =
      attributes.get('role') === 'button' || (tag === 'input' && (type === 'submit' || type === 'button'));
    const showing: Showing =
      sight.gone || tag === 'head' || parent?.showing === 'hidden'
        ? 'hidden'
        : sight.veiled || parent?.showing === 'veiled'
          ? 'veiled'
          : 'shown';
    return {
      kind: 'element',
      tag,
      attributes,
      parent,
      children: [],
      showing,
      // A button is a thing of its own, however it is laid out: its words never continue the text beside it.
      inline: !BUTTONS.has(tag) && !isButton && (sight.inline ?? INLINE_TAGS.has(tag)),
      order: this.order++,
      depth: parent === null ? 0 : parent.depth + 1,
      source,
    };
  }
}
