import { attributeOf, elementsWithin, type PageElement, type PageNode } from '../dom/page-tree.ts';
import { cleanLine, cleanText } from './clean-text.ts';
import { LABEL_LENGTH, type Meaning, meaningOf } from './labels.ts';
import { isPassedOver, type Line, type Scope } from './lines.ts';
import type { Pair } from './pair.ts';
import { columnHeads } from './table-heads.ts';

const VALUE_LENGTH = 2000;

/** Every labelled value of a scope whose lines are `lines`. A label without exactly one value beside it gives none. */
export function pairsOf(scope: Scope, lines: readonly Line[]): readonly Pair[] {
  const texts = new CellTexts(scope);
  const pairs: Pair[] = [];
  for (const root of scope.roots) {
    for (const element of elementsWithin(root, (inner) => isPassedOver(inner, scope))) {
      pairs.push(...attributePairs(element, texts), ...cellPairs(element, texts));
    }
  }
  for (const line of lines) pairs.push(...linePairs(line));
  return pairs;
}

/** Texts of nodes, each gathered once from those within it, and never longer than a value may be. */
class CellTexts {
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
    if (node.kind === 'text') return node.text.replace(/\s+/g, ' ').slice(0, VALUE_LENGTH * 2);
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

/** Tables made for narrow screens repeat the column's head in an attribute of each cell. */
function attributePairs(element: PageElement, texts: CellTexts): readonly Pair[] {
  for (const name of ['data-label', 'data-title', 'data-th', 'data-column', 'data-header', 'aria-label']) {
    const label = attributeOf(element, name);
    if (label === '') continue;
    const meaning = meaningOf(cleanLine(label));
    const value = texts.shown(element);
    if (meaning === undefined || value === '' || meaningOf(value) === meaning) continue;
    return [{ meaning, label, value, after: '', node: element, how: 'attribute', prose: false, from: 'page-text' }];
  }
  return [];
}

function cellPairs(element: PageElement, texts: CellTexts): readonly Pair[] {
  if (element.tag === 'tr') {
    const heads = columnHeads(element, texts);
    if (heads === 'is-head') return [];
    if (heads !== null) return heads;
  }
  const cells = element.children.filter((child) => !texts.isEmpty(child));
  if (cells.length < 2) return [];
  const meanings = cells.map((cell, at) => (isMidSentence(cells, at, texts) ? undefined : labelIn(cell, texts)));
  // A caption under its figure: exactly two cells, the label second.
  const [figure, caption] = cells;
  if (cells.length === 2 && meanings[0] === undefined && meanings[1] !== undefined && figure && caption) {
    return pairOf(meanings[1], caption, [figure], 'caption', texts);
  }
  const pairs: Pair[] = [];
  cells.forEach((cell, at) => {
    const meaning = meanings[at];
    if (meaning === undefined || meanings[at + 1] !== undefined) return;
    // Two values for one label in a row of a table: which of them is ours can't be told.
    if (element.tag === 'tr' && cells[at + 2] !== undefined && meanings[at + 2] === undefined) return;
    pairs.push(...pairOf(meaning, cell, cells.slice(at + 1, at + 4), 'cell', texts));
  });
  return pairs;
}

/** `The <b>title</b> is held by`: a word in running text, not a label. */
function isMidSentence(cells: readonly PageNode[], at: number, texts: CellTexts): boolean {
  const before = cells[at - 1];
  const cell = cells[at];
  if (before?.kind !== 'text' || cell === undefined || (cell.kind === 'element' && !cell.inline)) return false;
  return /[\p{L},]$/u.test(texts.shown(before)) && labelIn(before, texts) === undefined;
}

function pairOf(
  meaning: Meaning,
  label: PageNode,
  cells: readonly PageNode[],
  how: Pair['how'],
  texts: CellTexts,
): readonly Pair[] {
  const [node, ...rest] = cells;
  if (node === undefined) return [];
  let value = texts.shown(node).slice(0, VALUE_LENGTH);
  if (value === '') return [];
  // A currency sign set apart from its amount belongs to it.
  if (!/[\p{L}\p{N}]/u.test(value)) value += ` ${texts.shown(rest.shift() ?? node).slice(0, 60)}`;
  const next = rest[0];
  const sameLine = next !== undefined && (next.kind === 'text' || next.inline) && (node.kind === 'text' || node.inline);
  const after = sameLine ? (texts.shown(next).split('\n')[0] ?? '').slice(0, 30) : '';
  return [{ meaning, label: cleanLine(texts.label(label)), value, after, node, how, prose: false, from: 'page-text' }];
}

/** A cell that is a label and nothing else. A link or button is a thing to press, never the name of what follows. */
function labelIn(cell: PageNode, texts: CellTexts): Meaning | undefined {
  if (cell.kind === 'element' && (cell.tag === 'button' || cell.tag === 'a')) return undefined;
  const text = texts.label(cell);
  return text.includes('\n') ? undefined : meaningOf(text);
}

const BETWEEN = /\s[|•·–—]\s|[|•·]|;(?=\s*[\p{L} ]{2,30}:)|\t/u;

/** Labels within one line: `Lot: 12 | Odometer: 45,210 mi`, `Current bid $12,500`, `$12,500 high bid`. */
function linePairs(line: Line): readonly Pair[] {
  if (line.text.length > 1000) return [];
  const node = line.element;
  const pairs: Pair[] = [];
  for (const part of line.text.split(BETWEEN).slice(0, 40)) {
    const text = part.trim();
    const colon = text.indexOf(':');
    const named = colon > 0 && colon <= LABEL_LENGTH ? meaningOf(text.slice(0, colon)) : undefined;
    const value = text.slice(colon + 1).trim();
    if (named !== undefined && value !== '' && !/^\d\d\b/.test(text.slice(colon + 1))) {
      const label = text.slice(0, colon);
      pairs.push({ meaning: named, label, value, after: '', node, how: 'colon', prose: line.prose, from: 'page-text' });
    } else pairs.push(...runOnPairs(text, line));
  }
  return pairs;
}

const RUN_ON_WORDS = 6;

/** The longest label at the start of the text, or else at its end. */
function runOnPairs(text: string, line: Line): readonly Pair[] {
  const words = text.split(' ', 200);
  const most = Math.min(RUN_ON_WORDS, words.length - 1);
  for (const atStart of [true, false]) {
    for (let count = most; count >= 1; count--) {
      const label = (atStart ? words.slice(0, count) : words.slice(-count)).join(' ');
      const meaning = meaningOf(label);
      if (meaning === undefined) continue;
      const value = (atStart ? words.slice(count) : words.slice(0, -count)).join(' ');
      const how = atStart ? 'run-on' : 'trailing';
      return [{ meaning, label, value, after: '', node: line.element, how, prose: line.prose, from: 'page-text' }];
    }
  }
  return [];
}
