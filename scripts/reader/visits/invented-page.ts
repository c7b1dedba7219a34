import type { Dice } from '../dice.ts';
import { PARTS, type Part, type SiteLot, wording } from './invented-site.ts';

const LABELS: Readonly<Record<Part, string>> = {
  vin: 'VIN',
  name: '',
  number: 'Lot',
  price: 'Current bid',
  closes: 'Closes',
};
export const LAYOUTS = ['list of terms', 'boxes', 'table', 'lines', 'one line'] as const;
export type Layout = (typeof LAYOUTS)[number];

/** How a page stands before a part has come. */
const EMPTY = ['', '—', 'Loading…', '…'];

/** The block of one lot on a page, as a program of the page builds and changes it. */
export class LotBlock {
  readonly element: Element;
  private readonly holders = new Map<Part, Element>();

  constructor(document: Document, layout: Layout, parts: readonly Part[]) {
    this.element = document.createElement('section');
    for (const part of parts) this.element.append(this.row(document, layout, part));
  }

  /** Writes a part in place, into the text that is there or by a new one. */
  write(part: Part, text: string, inPlace: boolean): void {
    const holder = this.holders.get(part);
    if (holder === undefined) return;
    if (inPlace && holder.firstChild !== null) holder.firstChild.nodeValue = text;
    else holder.textContent = text;
  }

  fill(lot: SiteLot, parts: readonly Part[], inPlace: boolean): void {
    for (const part of parts) this.write(part, wording(lot, part), inPlace);
  }

  clear(parts: readonly Part[], dice: Dice): void {
    const empty = dice.one(EMPTY);
    for (const part of parts) this.write(part, empty, dice.happens(0.5));
  }

  private row(document: Document, layout: Layout, part: Part): Node {
    const make = (tag: string, text = ''): Element => {
      const element = document.createElement(tag);
      if (text !== '') element.append(document.createTextNode(text));
      return element;
    };
    const holder = make(part === 'name' ? 'h1' : layout === 'list of terms' ? 'dd' : layout === 'table' ? 'td' : 'b');
    this.holders.set(part, holder);
    if (part === 'name') return holder;
    if (layout === 'list of terms') return wrapped(make('dl'), make('dt', LABELS[part]), holder);
    if (layout === 'table') return wrapped(make('table'), wrapped(make('tr'), make('th', LABELS[part]), holder));
    if (layout === 'boxes')
      return wrapped(make('div'), make('span', LABELS[part]), document.createElement('br'), holder);
    if (layout === 'one line')
      return wrapped(make('span', ` ${LABELS[part]}: `), holder, document.createTextNode(' | '));
    return wrapped(make('p', `${LABELS[part]}: `), holder);
  }
}

function wrapped(outer: Element, ...inner: readonly Node[]): Element {
  outer.append(...inner);
  return outer;
}

/** What else stands on a page and could be taken for the lot: similar cars, the next lot, a sister with the same labels. */
export function neighbours(document: Document, others: readonly SiteLot[], dice: Dice): readonly Element[] {
  const [first, second] = others;
  if (first === undefined || second === undefined) return [];
  const found: Element[] = [];
  if (dice.happens(0.4)) {
    const aside = document.createElement('aside');
    aside.append(heading(document, dice.one(['Similar vehicles', 'Up next', 'Also in this sale'])));
    for (const lot of [first, second]) {
      const block = new LotBlock(document, dice.one(LAYOUTS), PARTS);
      block.fill(lot, PARTS, false);
      aside.append(block.element);
    }
    found.push(aside);
  }
  if (dice.happens(0.3)) {
    const sister = new LotBlock(document, dice.one(LAYOUTS), ['number', 'vin', 'price', 'closes']);
    sister.fill(first, PARTS, false);
    found.push(sister.element);
  }
  if (dice.happens(0.3)) {
    const line = document.createElement('p');
    line.textContent = `Next: lot ${second.number}, ${second.name}, now at ${wording(second, 'price')}`;
    found.push(line);
  }
  return found;
}

function heading(document: Document, text: string): Element {
  const element = document.createElement('h2');
  element.textContent = text;
  return element;
}
