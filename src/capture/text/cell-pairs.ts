import { attributeOf, type PageElement, type PageNode } from '../dom/page-tree.ts';
import { type CellTexts, VALUE_LENGTH } from './cell-texts.ts';
import { cleanLine } from './clean-text.ts';
import { type Meaning, meaningOf } from './labels.ts';
import type { Pair } from './pair.ts';
import { columnHeads, isRow } from './table-heads.ts';
import { fitsMeaning, namesItself } from './value-shape.ts';

/** Tables made for narrow screens repeat the column's head in an attribute of each cell. */
export function attributePairs(element: PageElement, texts: CellTexts): readonly Pair[] {
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

/** Labels and values that stand side by side, or one over the other, as parts of the same element. */
export function cellPairs(element: PageElement, texts: CellTexts): readonly Pair[] {
  if (isRow(element)) {
    const heads = columnHeads(element, texts);
    if (heads === 'is-head') return [];
    if (heads !== null) return heads;
  }
  const cells = element.children.filter((child) => !texts.isEmpty(child));
  if (cells.length < 2) return [];
  const meanings = cells.map((cell, at) => (isMidSentence(cells, at, texts) ? undefined : labelIn(cell, texts)));
  const captions = areCaptions(cells, meanings, texts);
  const pairs: Pair[] = [];
  cells.forEach((cell, at) => {
    const meaning = meanings[at];
    if (meaning === undefined) return;
    const [before, next, after] = [cells[at - 1], cells[at + 1], cells[at + 2]];
    if (captions) {
      if (before !== undefined && meanings[at - 1] === undefined) {
        pairs.push(...pairOf(meaning, cell, [before], 'caption', texts));
      }
      return;
    }
    if (next === undefined || meanings[at + 1] !== undefined || namesItself(texts.shown(next))) return;
    // Two values for one label in a row of a table: which of them is ours can't be told.
    if (isRow(element) && after !== undefined && meanings[at + 2] === undefined) return;
    pairs.push(...pairOf(meaning, cell, cells.slice(at + 1, at + 4), 'cell', texts));
  });
  return pairs;
}

/**
 * Whether labels stand under (or after) their values here: the first label has a fitting value before it, and either
 * nothing that could be its value after it, or the labels go on that way to the last.
 */
function areCaptions(
  cells: readonly PageNode[],
  meanings: readonly (Meaning | undefined)[],
  texts: CellTexts,
): boolean {
  const at = meanings.findIndex((meaning) => meaning !== undefined);
  const [before, meaning, next] = [cells[at - 1], meanings[at], cells[at + 1]];
  if (before === undefined || meaning === undefined || !fitsMeaning(texts.shown(before), meaning)) return false;
  if (next === undefined) return true;
  const value = texts.shown(next);
  const couldFollow = meanings[at + 1] === undefined && !namesItself(value) && fitsMeaning(value, meaning);
  return !couldFollow || meanings.at(-1) !== undefined;
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
