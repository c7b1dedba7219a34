import type { PageElement } from '../dom/page-tree.ts';
import type { CellTexts } from './cell-texts.ts';
import { isKnownLabel, isLabelLike, isValueLike } from './label-like.ts';
import type { Pair } from './pair.ts';
import { type TableCell, type TableModel, type TableRow, tableModel } from './table-model.ts';

/** The values of a table by the heads of its columns, or of its rows, or by the label beside each. */
export function tablePairs(
  table: PageElement,
  texts: CellTexts,
): { readonly model: TableModel; readonly pairs: readonly Pair[] } {
  const model = tableModel(table, texts);
  const pairs: Pair[] = [];
  let head: TableRow | null = null;
  for (const row of model.rows) {
    if (row.kind === 'head') head = row;
    else if (row.kind === 'data')
      pairs.push(...(head !== null && fits(row, head) ? underHeads(row, head, texts) : besideLabels(row, texts)));
  }
  return { model, pairs };
}

/** A row of facts within a table that has heads elsewhere is read by its own labels. */
function fits(row: TableRow, head: TableRow): boolean {
  const width = (cells: readonly TableCell[]) => cells.reduce((sum, cell) => sum + cell.span, 0);
  return row.cells.length >= Math.min(3, head.cells.length) && Math.abs(width(row.cells) - width(head.cells)) <= 1;
}

function underHeads(row: TableRow, head: TableRow, texts: CellTexts): readonly Pair[] {
  return row.cells.flatMap((cell): readonly Pair[] => {
    const over = head.cells.find((one) => cell.at >= one.at && cell.at < one.at + one.span);
    const label = over === undefined ? '' : texts.label(over.element) || over.text;
    return label === '' || cell.text === '' ? [] : [pairOf(label, cell, 'head', texts)];
  });
}

/**
 * A row without heads above: label, value, label, value; or a label and the values of several lots; or values over their
 * captions, each in one cell, which its own lines tell.
 */
function besideLabels(row: TableRow, texts: CellTexts): readonly Pair[] {
  const cells = row.cells.filter((cell) => cell.text !== '' || texts.label(cell.element) !== '');
  const [first, second] = cells;
  if (first === undefined || second === undefined) return [];
  const isLabel = (cell: TableCell | undefined) =>
    cell !== undefined && (cell.element.tag === 'th' || isLabelLike(cell.text));
  const known = (cell: TableCell | undefined) =>
    cell !== undefined && isKnownLabel(texts.label(cell.element) || cell.text);
  const alternate =
    cells.length % 2 === 0 &&
    cells.every((cell, at) => at % 2 === 1 || (isLabel(cell) && (known(cell) || !isValueLike(cell.text)))) &&
    (cells.length === 2 ||
      cells.some((cell, at) => at > 0 && at % 2 === 0 && (known(cell) || cell.element.tag === 'th')));
  if (alternate) {
    return cells.flatMap((cell, at) => {
      const value = cells[at + 1];
      return at % 2 === 1 || value === undefined
        ? []
        : [pairOf(texts.label(cell.element) || cell.text, value, 'cell', texts)];
    });
  }
  if (isLabel(first) && (known(first) || first.element.tag === 'th') && !known(second)) {
    return cells.slice(1).map((cell) => pairOf(texts.label(first.element) || first.text, cell, 'cell', texts));
  }
  // Labels here and there, each before its value.
  return cells.flatMap((cell, at) => {
    const value = cells[at + 1];
    return known(cell) && value !== undefined && !known(value) ? [pairOf(cell.text, value, 'cell', texts)] : [];
  });
}

const pairOf = (label: string, cell: TableCell, how: Pair['how'], texts: CellTexts): Pair => ({
  label,
  value: texts.shown(cell.element),
  after: '',
  node: cell.element,
  how,
  prose: false,
  from: 'page-text',
});
