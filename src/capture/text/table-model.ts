import { attributeOf, type PageElement } from '../dom/page-tree.ts';
import { meaningOf } from '../roles/label-list.ts';
import type { CellTexts } from './cell-texts.ts';
import { isKnownLabel, isLabelLike } from './label-like.ts';

/** A cell of a table and the columns that it covers, from `at` on. */
export interface TableCell {
  readonly element: PageElement;
  readonly text: string;
  readonly at: number;
  readonly span: number;
}

export interface TableRow {
  readonly element: PageElement;
  readonly cells: readonly TableCell[];
  /** `head` names the columns below; `break` is one text across the table; `data` is anything else. */
  readonly kind: 'head' | 'break' | 'data';
}

export interface TableModel {
  readonly element: PageElement;
  readonly rows: readonly TableRow[];
  readonly columns: number;
}

const TABLES: ReadonlySet<string> = new Set(['table', 'grid', 'treegrid']);
const CELLS: ReadonlySet<string> = new Set(['cell', 'gridcell', 'columnheader', 'rowheader']);

const roleOf = (element: PageElement): string => attributeOf(element, 'role');
export const isTable = (element: PageElement): boolean => element.tag === 'table' || TABLES.has(roleOf(element));
export const isRow = (element: PageElement): boolean => element.tag === 'tr' || roleOf(element) === 'row';
export const isRowGroup = (element: PageElement): boolean =>
  /^(?:tbody|thead|tfoot)$/.test(element.tag) || roleOf(element) === 'rowgroup';
const isCell = (element: PageElement): boolean =>
  element.tag === 'td' || element.tag === 'th' || CELLS.has(roleOf(element));
const isHeadCell = (element: PageElement): boolean => element.tag === 'th' || roleOf(element) === 'columnheader';

/** The rows and columns of a table, or of what its page says is one (WAI-ARIA `table`, `grid`, `treegrid`). */
export function tableModel(table: PageElement, texts: CellTexts): TableModel {
  const rows: TableRow[] = [];
  const held: { left: number; cell: TableCell }[] = [];
  const found = rowsOf(table);
  const columns = Math.max(0, ...found.map((row) => widthOf(row)));
  for (const element of found) {
    const cells: TableCell[] = [];
    let at = 0;
    const skipHeld = () => {
      for (let over = heldAt(held, at); over !== undefined; over = heldAt(held, at)) at = over.cell.at + over.cell.span;
    };
    for (const inner of element.children) {
      if (inner.kind !== 'element' || !isCell(inner) || inner.showing === 'hidden') continue;
      skipHeld();
      const cell = { element: inner, text: texts.shown(inner), at, span: spanOf(inner, 'colspan') };
      cells.push(cell);
      const down = spanOf(inner, 'rowspan');
      if (down > 1) held.push({ left: down, cell });
      at += cell.span;
    }
    for (const one of held) one.left--;
    held.splice(0, held.length, ...held.filter((one) => one.left > 0));
    rows.push({ element, cells, kind: kindOf(cells, columns, texts) });
  }
  return { element: table, rows, columns };
}

const heldAt = (held: readonly { left: number; cell: TableCell }[], at: number) =>
  held.find(({ cell }) => at >= cell.at && at < cell.at + cell.span);

const MOST_ROWS = 3000;

/** Its rows, not those of tables within. */
function rowsOf(table: PageElement): readonly PageElement[] {
  const rows: PageElement[] = [];
  const waiting: PageElement[] = [table];
  for (let next = waiting.pop(); next !== undefined && rows.length < MOST_ROWS; next = waiting.pop()) {
    if (next !== table && (isTable(next) || next.showing === 'hidden')) continue;
    if (isRow(next)) rows.push(next);
    else for (const child of next.children.toReversed()) if (child.kind === 'element') waiting.push(child);
  }
  return rows;
}

const widthOf = (row: PageElement): number =>
  row.children.reduce((sum, cell) => sum + (cell.kind === 'element' && isCell(cell) ? spanOf(cell, 'colspan') : 0), 0);

function spanOf(cell: PageElement, name: 'colspan' | 'rowspan'): number {
  const span = Number(attributeOf(cell, name) || '1');
  return Number.isInteger(span) && span >= 1 && span <= 100 ? span : 1;
}

function kindOf(cells: readonly TableCell[], columns: number, texts: CellTexts): TableRow['kind'] {
  const full = cells.filter((cell) => texts.label(cell.element) !== '' || cell.text !== '');
  if (columns > 2 && full.length === 1 && (full[0]?.span ?? 0) >= columns - 1) return 'break';
  if (full.length < 2) return 'data';
  const labels = full.map((cell) => texts.label(cell.element) || cell.text);
  const likely = labels.filter(isLabelLike).length;
  const known = labels.filter(isKnownLabel).length;
  if (full.every((cell) => isHeadCell(cell.element)) && (known > 0 || likely === full.length)) return 'head';
  // Labels all along, two of them side by side: a row of facts has values between. Words of a value may look like a label's,
  // so both have to be known as they stand.
  const whole = (label = '') => isKnownLabel(label) && meaningOf(label) !== undefined;
  const beside = labels.some((label, at) => whole(label) && whole(labels[at + 1]));
  return full.length >= 3 && likely === full.length && known >= Math.max(2, full.length * 0.5) && beside
    ? 'head'
    : 'data';
}
