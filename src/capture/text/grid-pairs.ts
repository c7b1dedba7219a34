import type { PageElement, PageNode } from '../dom/page-tree.ts';
import type { CellTexts } from './cell-texts.ts';
import { isKnownLabel, isLabelLike } from './label-like.ts';
import type { Pair } from './pair.ts';

const LEAST_COLUMNS = 3;
const MOST_COLUMNS = 30;
const MOST_ROWS = 2000;
/** What stands over the names of the columns: a title, a few words. */
const MOST_ABOVE = 6;

/** Rows of plain boxes under a first one that names their columns: a table to the eye, though its markup does not say so. */
export function gridPairs(element: PageElement, texts: CellTexts): readonly Pair[] {
  const rows = element.children.filter((child): child is PageElement => child.kind === 'element');
  if (rows.length < 2 || rows.length > MOST_ROWS) return [];
  const at = rows.slice(0, MOST_ABOVE).findIndex((row) => headsIn(row, texts) !== null);
  const labels = rows[at] === undefined ? null : headsIn(rows[at], texts);
  if (labels === null) return [];
  return rows.slice(at + 1).flatMap((row): readonly Pair[] => {
    const cells = cellsOf(row);
    if (cells.length !== labels.length) return [];
    return cells.flatMap((node, at): readonly Pair[] => {
      const [label = '', value] = [labels[at], texts.shown(node)];
      if (label === '' || value === '' || value === label) return [];
      return [{ label, value, after: '', node, how: 'head', prose: false, from: 'page-text' }];
    });
  });
}

/** The names of columns in a row that holds nothing else; null for any other row. */
function headsIn(row: PageElement, texts: CellTexts): readonly string[] | null {
  const heads = cellsOf(row);
  if (heads.length < LEAST_COLUMNS || heads.length > MOST_COLUMNS) return null;
  const labels = heads.map((head) => texts.label(head));
  const known = labels.filter(isKnownLabel).length;
  const isHead = labels.every((label) => label === '' || isLabelLike(label)) && known >= Math.max(2, heads.length / 2);
  return isHead ? labels : null;
}

const cellsOf = (row: PageElement): readonly PageNode[] => row.children.filter((child) => child.kind === 'element');
