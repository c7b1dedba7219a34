import { cleanLine } from '../dom/clean-text.ts';
import { ancestorsOf, type PageElement } from '../dom/page-tree.ts';
import { CellTexts } from '../text/cell-texts.ts';
import { isKnownLabel } from '../text/label-like.ts';
import { isTable, type TableCell, tableModel } from '../text/table-model.ts';

/** What names the cells of a table: many elements of one table are asked about. */
const namedBy = new WeakMap<PageElement, ReadonlyMap<PageElement, string>>();

/**
 * What names the cell of a table that an element stands in: a known word at the start of its row, else the head of its
 * column, else what its row begins with; null outside tables, empty for a cell that nothing names.
 */
export function columnLabel(element: PageElement): string | null {
  const around = [element, ...ancestorsOf(element)];
  const table = around.find(isTable);
  if (table === undefined) return null;
  const names = namedBy.get(table) ?? nameCells(table);
  namedBy.set(table, names);
  const cell = around.find((one) => names.has(one));
  return cell === undefined ? null : (names.get(cell) ?? '');
}

function nameCells(table: PageElement): ReadonlyMap<PageElement, string> {
  const texts = new CellTexts({ roots: [table], skip: new Set() });
  const names = new Map<PageElement, string>();
  let heads: readonly TableCell[] = [];
  for (const { kind, cells } of tableModel(table, texts).rows) {
    if (kind === 'head') heads = cells;
    if (kind !== 'data') continue;
    const [first] = cells;
    const begins = first?.element.tag === 'th' || first?.element.attributes.get('role') === 'rowheader';
    const rowHead = begins && first !== undefined ? nameIn(first, texts) : '';
    for (const cell of cells) {
      const over = heads.find((head) => cell.at >= head.at && cell.at < head.at + head.span);
      const column = over === undefined ? '' : nameIn(over, texts);
      const ofRow = cell === first ? '' : rowHead;
      if (column === '' && ofRow === '') continue;
      names.set(cell.element, column === '' || (ofRow !== '' && isKnownLabel(ofRow)) ? ofRow : column);
    }
  }
  return names;
}

const nameIn = (cell: TableCell, texts: CellTexts): string => cleanLine(texts.label(cell.element) || cell.text);
