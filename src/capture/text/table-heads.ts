import type { PageElement, PageNode } from '../dom/page-tree.ts';
import { attributeOf } from '../dom/page-tree.ts';
import { type Meaning, meaningOf } from './labels.ts';
import type { Pair } from './pair.ts';

interface Texts {
  readonly shown: (node: PageNode) => string;
  readonly label: (node: PageNode) => string;
}

/**
 * The values of a table row by the heads of its columns. `is-head` when the row is itself the heads; null when the
 * table has no row of heads, so that labels are to be sought within the row.
 */
export function columnHeads(row: PageElement, texts: Texts): readonly Pair[] | 'is-head' | null {
  const head = headRow(row, texts);
  if (head === null) return null;
  if (head === row) return 'is-head';
  const labels = new Map<number, PageElement>();
  for (const [at, cell] of columnsOf(head)) labels.set(at, cell);
  return [...columnsOf(row)].flatMap(([at, cell]): Pair[] => {
    const label = labels.get(at);
    const text = label === undefined ? '' : texts.label(label);
    const meaning = meaningOf(text);
    const value = texts.shown(cell);
    if (meaning === undefined || value === '') return [];
    return [{ meaning, label: text, value, after: '', node: cell, how: 'cell', prose: false, from: 'page-text' }];
  });
}

function headRow(row: PageElement, texts: Texts): PageElement | null {
  const group = row.parent;
  if (group === null) return null;
  const table = isTable(group) ? group : group.parent;
  const groups = table !== null && isTable(table) ? [table, ...table.children] : [group];
  for (const part of groups) {
    if (part.kind !== 'element') continue;
    const first = part.children.find((child): child is PageElement => child.kind === 'element' && isRow(child));
    if (first !== undefined && isHeadRow(first, texts)) return first;
  }
  return null;
}

/** All heads, or at least three labels and no value between two of them. */
function isHeadRow(row: PageElement, texts: Texts): boolean {
  const cells = cellsOf(row);
  if (cells.length < 2) return false;
  const meanings = cells.map((cell): Meaning | undefined => meaningOf(texts.label(cell)));
  const known = meanings.filter((meaning) => meaning !== undefined).length;
  if (known >= 1 && cells.every((cell) => cell.tag === 'th' || roleOf(cell) === 'columnheader')) return true;
  const side = meanings.some((meaning, at) => meaning !== undefined && meanings[at + 1] !== undefined);
  return known >= 3 && side;
}

const cellsOf = (row: PageElement): readonly PageElement[] =>
  row.children.filter((cell): cell is PageElement => cell.kind === 'element' && isCell(cell));

const roleOf = (element: PageElement): string => attributeOf(element, 'role');

const isTable = (element: PageElement): boolean => element.tag === 'table' || TABLES.has(roleOf(element));

/** Rows of a table, or of what its page says is one (WAI-ARIA `table`, `grid`, `treegrid`). */
export const isRow = (element: PageElement): boolean => element.tag === 'tr' || roleOf(element) === 'row';

const isCell = (element: PageElement): boolean =>
  element.tag === 'td' || element.tag === 'th' || CELLS.has(roleOf(element));

const TABLES: ReadonlySet<string> = new Set(['table', 'grid', 'treegrid']);
const CELLS: ReadonlySet<string> = new Set(['cell', 'gridcell', 'columnheader', 'rowheader']);

function* columnsOf(row: PageElement): Generator<readonly [number, PageElement]> {
  let at = 0;
  for (const cell of cellsOf(row)) {
    yield [at, cell];
    const span = Number(attributeOf(cell, 'colspan') || '1');
    at += Number.isInteger(span) && span >= 1 && span <= 100 ? span : 1;
  }
}
