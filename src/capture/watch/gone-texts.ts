import { type SafeDom, TEXT_NODE } from '../dom/safe-dom.ts';

const VIN_SHAPED = /(?<![A-Z0-9])[A-HJ-NPR-Z0-9]{17}(?![A-Z0-9])/g;
/** Longer texts are no figures; of longer ones only the VINs are noted. */
const LONGEST_FIGURE = 60;
const MOST_NOTED = 2000;
const MOST_TEXTS = 2000;
const MOST_SEARCHED = 5000;

/** Figures and VINs that a page showed and then took away or wrote over. Only these two are noted, and never leave the page. */
export class GoneTexts {
  private readonly dom: SafeDom;
  private readonly figures = new Set<string>();
  private readonly vins = new Set<string>();

  constructor(dom: SafeDom) {
    this.dom = dom;
  }

  add(text: string): void {
    for (const [vin] of text.slice(0, MOST_SEARCHED).matchAll(VIN_SHAPED)) {
      if (this.vins.size < MOST_NOTED) this.vins.add(vin);
    }
    if (text.length <= LONGEST_FIGURE && /\d/.test(text) && this.figures.size < MOST_NOTED)
      this.figures.add(bare(text));
  }

  /** Every text within a node that was taken away. */
  addWithin(node: Node): void {
    const waiting: Node[] = [node];
    for (let seen = 0, next = waiting.pop(); next !== undefined && seen < MOST_TEXTS; next = waiting.pop(), seen++) {
      if (this.dom.type(next) === TEXT_NODE) this.add(this.dom.value(next));
      for (let child = this.dom.firstChild(next); child !== null; child = this.dom.nextSibling(child))
        waiting.push(child);
    }
  }

  /** Whether such a figure stood somewhere on the page before. When too many have gone to be told apart, it may have. */
  has(text: string): boolean {
    return this.figures.size >= MOST_NOTED || this.figures.has(bare(text));
  }

  hasOtherVin(than: string): boolean {
    return this.vins.size > (this.vins.has(than) ? 1 : 0);
  }
}

const bare = (text: string): string => text.replace(/[^\p{L}\p{N}]/gu, '').toUpperCase();
