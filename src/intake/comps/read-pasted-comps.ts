import { type Comp, compSchema } from '../../domain/retail/comp.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { sniffDialect } from '../csv/dialect.ts';
import { readRecords } from '../csv/records.ts';
import { isBlankRow } from '../open-table.ts';
import { COMP_COLUMNS, type CompColumn, compColumnOf } from './comp-columns.ts';
import { type CompCells, readCompCells } from './read-comp-cells.ts';

export interface PastedComps {
  readonly comps: readonly { readonly line: number; readonly comp: Comp }[];
  /** Rows that were not taken, each with what to do about it. */
  readonly faults: readonly { readonly line: number; readonly message: string }[];
  /** Headings of columns that say nothing here. */
  readonly unused: readonly string[];
}

/**
 * Reads comparables as they are copied from a spreadsheet. A first row of headings says which column is which; without
 * one they are taken in the order of `COMP_COLUMNS`. A row with a cell that can't be read is not taken at all: half a
 * comparable would count as a whole one.
 */
export function readPastedComps(text: string, today: LocalDate): PastedComps {
  const rows = rowsOf(text);
  const first = rows[0];
  const headings = first !== undefined && isHeadings(first.cells) ? first.cells : undefined;
  const columns = headings === undefined ? [...COMP_COLUMNS] : headings.map(compColumnOf);
  const priceHeading = headings?.[columns.indexOf('price')] ?? '';
  const comps: PastedComps['comps'][number][] = [];
  const faults: PastedComps['faults'][number][] = [];
  if (headings !== undefined && !columns.includes('price')) {
    const message = 'No column is headed “Price”. Add that heading, or paste the rows without headings.';
    return { comps, faults: [{ line: first?.line ?? 1, message }], unused: [] };
  }
  for (const { line, cells } of headings === undefined ? rows : rows.slice(1)) {
    const read = readCompCells(cellsByColumn(cells, columns), today, priceHeading);
    if (!read.ok) {
      faults.push({ line, message: read.message });
      continue;
    }
    const comp = compSchema.safeParse(read.value);
    if (comp.success) comps.push({ line, comp: comp.data });
    else faults.push({ line, message: 'Its differences take off half the price or more, so it is not comparable.' });
  }
  const unused = headings?.filter((heading, i) => columns[i] === undefined && heading.trim() !== '') ?? [];
  return { comps, faults, unused };
}

function rowsOf(text: string): readonly { line: number; cells: readonly string[] }[] {
  const found: { line: number; cells: readonly string[] }[] = [];
  for (const { firstRow, records } of readRecords(text, sniffDialect(text))) {
    records.forEach((cells, i) => {
      if (!isBlankRow(cells)) found.push({ line: firstRow + i, cells });
    });
  }
  return found;
}

/** A row that names columns and holds no figure. */
const isHeadings = (cells: readonly string[]): boolean =>
  cells.every((cell) => !/\d/.test(cell)) && cells.some((cell) => compColumnOf(cell) !== undefined);

function cellsByColumn(cells: readonly string[], columns: readonly (CompColumn | undefined)[]): CompCells {
  const byColumn: Partial<Record<CompColumn, string>> = {};
  columns.forEach((column, i) => {
    const text = cells[i]?.trim() ?? '';
    if (column !== undefined && byColumn[column] === undefined && text !== '') byColumn[column] = text;
  });
  return byColumn;
}
