import { attributeOf, elementsWithin, type PageElement } from '../dom/page-tree.ts';
import { attributePairs } from './attribute-pairs.ts';
import { cellPairs } from './cell-pairs.ts';
import { CellTexts } from './cell-texts.ts';
import { dataPairs } from './data-pairs.ts';
import { gridPairs } from './grid-pairs.ts';
import { linePairs } from './line-pairs.ts';
import { isPassedOver, type Line, type Scope } from './lines.ts';
import type { Pair } from './pair.ts';
import { spokenLines } from './spoken-lines.ts';
import { isRow, isRowGroup, isTable, type TableModel } from './table-model.ts';
import { tablePairs } from './table-pairs.ts';

export interface PairsFound {
  readonly pairs: readonly Pair[];
  readonly tables: readonly TableModel[];
  /** Lines that are not seen but said. */
  readonly spoken: readonly Line[];
}

/** Every labeled value of a scope whose lines are `lines`, whether the label is known or not. */
export function pairsOf(scope: Scope, lines: readonly Line[]): PairsFound {
  const texts = new CellTexts(scope);
  const pairs: Pair[] = [];
  const tables: TableModel[] = [];
  const all = scope.roots.flatMap((root) => elementsWithin(root, (inner) => isPassedOver(inner, scope)));
  const byId = new Map<string, PageElement>();
  const labelFor = new Map<string, PageElement>();
  for (const element of all) {
    const id = attributeOf(element, 'id');
    if (id !== '' && !byId.has(id)) byId.set(id, element);
    const of = element.tag === 'label' ? attributeOf(element, 'for') : '';
    if (of !== '') labelFor.set(of, element);
  }
  for (const element of all) {
    pairs.push(...attributePairs(element, texts, byId, labelFor), ...dataPairs(element));
    if (isTable(element)) {
      const { model, pairs: inTable } = tablePairs(element, texts);
      if (model.rows.length > 0) tables.push(model);
      pairs.push(...inTable);
    } else if (!isRow(element) && !isRowGroup(element)) {
      const grid = gridPairs(element, texts);
      pairs.push(...(grid.length > 0 ? grid : cellPairs(element, texts)));
    }
  }
  const spoken = spokenLines(all, (element) => texts.shown(element));
  for (const line of [...lines, ...spoken]) pairs.push(...linePairs(line));
  return { pairs, tables, spoken };
}
