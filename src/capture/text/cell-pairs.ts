import { cleanLine } from '../dom/clean-text.ts';
import type { PageElement, PageNode } from '../dom/page-tree.ts';
import { meaningOf } from '../roles/label-list.ts';
import { type CellTexts, VALUE_LENGTH } from './cell-texts.ts';
import { isKnownLabel, isLabelLike, isValueLike, labelStrength } from './label-like.ts';
import type { Pair } from './pair.ts';

/** Labels and values that stand side by side, or one over the other, as parts of the same element. */
export function cellPairs(element: PageElement, texts: CellTexts): readonly Pair[] {
  const cells = element.children.filter((child) => !texts.isEmpty(child));
  if (cells.length < 2 || cells.length > 400) return [];
  if (cells.some((cell) => cell.kind === 'element' && cell.tag === 'dt')) return termPairs(cells, texts);
  const labels = cells.map((cell, at) => (isMidSentence(cells, at, texts) ? '' : labelIn(cell, texts)));
  const marks = marksOf(labels, cells, texts);
  if (!marks.some((mark) => mark)) return [];
  const captions = areCaptions(cells, marks, texts);
  const pairs: Pair[] = [];
  cells.forEach((_, at) => {
    const label = labels[at] ?? '';
    if (marks[at] !== true) return;
    if (captions) {
      const before = cells[at - 1];
      if (before !== undefined && marks[at - 1] !== true) pairs.push(...pairOf(label, [before], 'caption', texts));
      return;
    }
    const next = cells[at + 1];
    if (next === undefined || marks[at + 1] === true || namesItself(texts.shown(next))) return;
    pairs.push(...pairOf(label, cells.slice(at + 1, at + 14), 'cell', texts));
  });
  return pairs;
}

/** Each term of a list and what is described under it. */
function termPairs(cells: readonly PageNode[], texts: CellTexts): readonly Pair[] {
  return cells.flatMap((cell, at) => {
    if (cell.kind !== 'element' || cell.tag !== 'dt') return [];
    const next = cells[at + 1];
    if (next?.kind !== 'element' || next.tag !== 'dd') return [];
    return pairOf(cleanLine(texts.label(cell)), [next], 'cell', texts);
  });
}

/** Which of the parts are labels. */
function marksOf(labels: readonly string[], cells: readonly PageNode[], texts: CellTexts): readonly boolean[] {
  const known = labels.map((label) => label !== '' && isKnownLabel(label));
  // A value may be a word that names something elsewhere: of two the first is the name.
  if (cells.length === 2 && known[0] === true && known[1] === true) return [true, false];
  if (takeTurns(labels, known, cells)) return labels.map((label, at) => at % 2 === 0 && label !== '');
  return labels.map(
    (label, at) => label !== '' && !holdsBoth(cells[at], label, texts) && isLabelHere(label, cells, at, texts),
  );
}

/** `Trim <b>Plus</b>` is a label with its value, and no label of what stands beside it. */
function holdsBoth(cell: PageNode | undefined, label: string, texts: CellTexts): boolean {
  if (cell === undefined || cell.kind === 'text' || meaningOf(label) !== undefined) return false;
  const parts = cell.children.filter((child) => !texts.isEmpty(child));
  // A label in two languages is a label all the same.
  return parts.length >= 2 && !parts.every((part) => isKnownLabel(texts.label(part)));
}

/** Whether labels and values take turns to the last: two kinds of element, of which the first ones are mostly known words. */
function takeTurns(labels: readonly string[], known: readonly boolean[], cells: readonly PageNode[]): boolean {
  if (cells.length < 6 || cells.length % 2 === 1) return false;
  const half = cells.length / 2;
  const even = known.filter((one, at) => one && at % 2 === 0).length;
  const odd = known.filter((one, at) => one && at % 2 === 1).length;
  const named = labels.filter((label, at) => at % 2 === 0 && label !== '').length;
  const looks = (cell: PageNode) => (cell.kind === 'text' ? '' : `${cell.tag}.${cell.attributes.get('class') ?? ''}`);
  const [one, other] = [new Set<string>(), new Set<string>()];
  for (const [at, cell] of cells.entries()) (at % 2 === 0 ? one : other).add(looks(cell));
  const differ = one.size === 1 && ![...other].some((look) => one.has(look));
  return named === half && even > odd * 2 && even >= half * (differ ? 0.4 : 0.7);
}

/** Among two parts the first is the name of the second even if nobody knows the word; among more, only known words are. */
function isLabelHere(label: string, cells: readonly PageNode[], at: number, texts: CellTexts): boolean {
  if (isKnownLabel(label)) return true;
  if (cells.length !== 2) return false;
  const other = cells[1 - at];
  if (other === undefined) return false;
  const text = texts.shown(other).split('\n', 1)[0] ?? '';
  if (isKnownLabel(text)) return false;
  const bothAreBlocks = cells.every((cell) => cell.kind === 'element');
  return at === 0 ? bothAreBlocks || isValueLike(text) : bothAreBlocks && isValueLike(text) && !isValueLike(label);
}

/**
 * Whether labels stand under (or after) their values here: the first label has a value before it, and either nothing that
 * could be its value after it, or the labels go on that way to the last.
 */
function areCaptions(cells: readonly PageNode[], marks: readonly boolean[], texts: CellTexts): boolean {
  const at = marks.indexOf(true);
  const [before, next] = [cells[at - 1], cells[at + 1]];
  if (before === undefined || texts.shown(before).length > 80) return false;
  if (next === undefined) return true;
  const couldFollow = marks[at + 1] !== true && !namesItself(texts.shown(next));
  return !couldFollow || marks.at(-1) === true;
}

/** `The <b>title</b> is held by`: a word in running text, not a label. */
function isMidSentence(cells: readonly PageNode[], at: number, texts: CellTexts): boolean {
  const before = cells[at - 1];
  const cell = cells[at];
  if (before?.kind !== 'text' || cell === undefined || (cell.kind === 'element' && !cell.inline)) return false;
  return /[\p{L},]$/u.test(texts.shown(before)) && labelIn(before, texts) === '';
}

/** Whether a text brings its own label: `Minimum increment: $250.00`, `Lot 12`. It is then no value of the label before. */
function namesItself(text: string): boolean {
  const first = text.slice(0, 200).split('\n', 1)[0] ?? '';
  const colon = first.indexOf(':');
  if (colon > 0 && colon <= 40 && !/\d$/.test(first.slice(0, colon)) && isKnownLabel(first.slice(0, colon)))
    return true;
  const words = first.split(' ', 6);
  for (let count = Math.min(5, words.length - 1); count >= 1; count--) {
    if (/^[$#\d]/.test(words[count] ?? '') && labelStrength(words.slice(0, count).join(' ')) >= 0.9) return true;
  }
  return false;
}

function pairOf(label: string, cells: readonly PageNode[], how: Pair['how'], texts: CellTexts): readonly Pair[] {
  const [node, ...rest] = cells;
  if (node === undefined) return [];
  let value = texts.shown(node).slice(0, VALUE_LENGTH);
  if (value === '') return [];
  // A currency sign set apart from its amount belongs to it, and so do the other parts of a figure that is set in parts.
  if (!/[\p{L}\p{N}]/u.test(value)) value += texts.shown(rest.shift() ?? node).slice(0, 60);
  while (rest[0] !== undefined && goesOn(value, texts.shown(rest[0]))) value += texts.shown(rest.shift() ?? node);
  const next = rest[0];
  const sameLine = next !== undefined && (next.kind === 'text' || next.inline) && (node.kind === 'text' || node.inline);
  const after = sameLine ? (texts.shown(next).split('\n')[0] ?? '').slice(0, 40) : '';
  return [{ label: cleanLine(label), value, after, node, how, prose: false, from: 'page-text' }];
}

/** `18` and `,600`; `18,` and `600`. */
const goesOn = (figure: string, next: string): boolean =>
  (/^\$?[\d,.]+$/.test(figure) && /^[\d,.]$/.test(next)) ||
  (/\d$/.test(figure) && /^[,.](?:\d{1,3})?$/.test(next)) ||
  (/\d[,.]$/.test(figure) && /^\d{1,3}\b/.test(next));

/** A cell that is a label and nothing else. A link or button is a thing to press, never the name of what follows. */
function labelIn(cell: PageNode, texts: CellTexts): string {
  if (cell.kind === 'element' && (cell.tag === 'button' || cell.tag === 'a' || cell.tag === 'img')) return '';
  const text = texts.label(cell);
  return isLabelLike(text.replace(/\s*:$/, '')) ? text : '';
}
