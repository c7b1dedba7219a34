import type { LotFacts } from '../../domain/lot/lot.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import type { ColumnFieldId } from '../columns/column-fields.ts';
import { unguardCell } from '../csv/guard-cell.ts';
import { type Cells, readCells } from './read-cells.ts';
import type { ReadContext } from './read-context.ts';
import { readMoreCell } from './read-more-cell.ts';
import { type RowContext, remembering } from './row-context.ts';
import { RowDraft } from './row-draft.ts';
import type { RowReading } from './row-reading.ts';

/** Which column holds what. A column whose field is null is left out. */
export interface ColumnChoice {
  readonly column: number;
  readonly heading: string;
  readonly field: ColumnFieldId | null;
}

/**
 * Reads one row.
 * @param row its number, as a spreadsheet counts
 * @param problem what the file's own marks got wrong in this row, in a sentence
 */
export type RowReader = (cells: readonly string[], row: number, problem?: string) => RowReading;

/** Reads one row on its own; for many rows of one file make a reader once, which remembers what they repeat. */
export const readRow = (
  cells: readonly string[],
  columns: readonly ColumnChoice[],
  context: ReadContext,
  row = 1,
): RowReading => rowReader(columns, context)(cells, row);

/**
 * Makes the reader for the rows of one file. The same row always reads the same. One bad cell never costs the row,
 * unless nothing else in it says which lot it is.
 */
export function rowReader(columns: readonly ColumnChoice[], given: ReadContext): RowReader {
  const context = remembering(given);
  const mapped = columns.flatMap(({ column, heading, field }) => (field === null ? [] : [{ column, heading, field }]));
  const severalNotes = mapped.filter(({ field }) => field === 'notes').length > 1;
  const width = columns.reduce((most, { column }) => Math.max(most, column + 1), 0);
  const fields = new Set(mapped.map(({ field }) => field));
  return (cells, row, problem) => {
    const draft = new RowDraft(row, context.from);
    if (problem !== undefined) draft.aboutRow(problem, 'question', cells.join(' '));
    const found: Cells = {};
    for (const { column, heading, field } of mapped) {
      const raw = cells[column];
      if (raw === undefined || raw === '') continue;
      const text = unguardCell(raw).trim();
      if (isBlankCell(text)) continue;
      const cell = { field, column, heading, text };
      if (field === 'notes' && severalNotes) draft.note(`${heading}: ${cell.text}`);
      else found[field] ??= cell;
    }
    const more = takeMore(found, fields, draft, context);
    readCells(found, draft, context);
    if (found.notes) draft.note(found.notes.text);
    keepExtraCells(cells, width, draft);
    const { notes, ...others } = more;
    if (notes !== undefined) draft.note(notes);
    Object.assign(draft.facts, others);
    return draft.finish(isIdentified(draft, cells));
  };
}

/** What the tool's own column says; the cells that say the same less fully are taken out of the row. */
function takeMore(found: Cells, mapped: ReadonlySet<ColumnFieldId>, draft: RowDraft, context: RowContext): LotFacts {
  if (found.more === undefined) return {};
  const more = readMoreCell(found.more, found, mapped, context);
  if (!more.ok) {
    draft.question(found.more, more.message);
    return {};
  }
  for (const id of more.value.settled) delete found[id];
  return more.value.facts;
}

/** More cells than headings: most often a thousands comma that was not put in quotes and moved the cells after it. */
function keepExtraCells(cells: readonly string[], width: number, draft: RowDraft): void {
  if (cells.length <= width) return;
  const extra = cells.slice(width).filter((cell) => !isBlankCell(cell));
  if (extra.length === 0) return;
  const message = `This row has ${cells.length} cells under ${width} headings. A comma inside a value may have moved the cells after it: check them.`;
  draft.aboutRow(message, 'question', extra.join(' | '));
  draft.note(`Beyond the last heading: ${extra.join(' | ')}`);
}

function isIdentified(draft: RowDraft, cells: readonly string[]): boolean {
  const { vin, lotNumber, make, model, pageUrl } = draft.facts;
  if ([vin, lotNumber, make, model, pageUrl].some((name) => name !== undefined)) return true;
  const message = 'Nothing here says which lot it is. Write a VIN, a lot number, a make or a model into the row.';
  draft.aboutRow(message, 'row', cells.filter((cell) => !isBlankCell(cell)).join(' | '));
  return false;
}
