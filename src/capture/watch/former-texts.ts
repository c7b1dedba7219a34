import { type SafeDom, TEXT_NODE } from '../dom/safe-dom.ts';

const LONGEST = 120;
const MOST_EACH = 8;

/** What stood in an element before what stands there now, where it was written over. Only texts with a figure are kept. */
export class FormerTexts {
  private readonly dom: SafeDom;
  private readonly kept = new WeakMap<Node, Set<string>>();

  constructor(dom: SafeDom) {
    this.dom = dom;
  }

  add(holder: Node | null, text: string): void {
    if (holder === null || text.length > LONGEST || !/\d/.test(text)) return;
    const kept = this.kept.get(holder) ?? new Set<string>();
    if (kept.size < MOST_EACH) kept.add(bare(text));
    this.kept.set(holder, kept);
  }

  addNode(holder: Node, node: Node): void {
    if (this.dom.type(node) === TEXT_NODE) this.add(holder, this.dom.value(node));
  }

  /** Whether something else than now stood where one of these texts stands. */
  hadOthers(texts: readonly Node[]): boolean {
    return texts.some((text) => {
      const holder = this.dom.parent(text);
      const now = bare(this.dom.value(text));
      return holder !== null && [...(this.kept.get(holder) ?? [])].some((one) => one !== now);
    });
  }
}

const bare = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, '').toUpperCase();
