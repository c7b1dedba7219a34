import type { LotFacts } from '../../domain/lot/lot.ts';
import { isBlankCell, isEmptyTitle } from '../columns/blank-cell.ts';
import type { ColumnFieldId } from '../columns/column-fields.ts';
import { unguardCell } from '../csv/guard-cell.ts';
import { type Cells, readCells } from './read-cells.ts';
import type { ReadContext } from './read-context.ts';
import { readMoreCell } from './read-more-cell.ts';
import { type RowContext, remembering } from './row-context.ts';
import { type Cell, RowDraft } from './row-draft.ts';
import type { RowReading } from './row-reading.ts';
import { shorten } from './shorten.ts';
import { strayVin } from './stray-vin.ts';
import { isTotalsRow } from './totals-row.ts';

/** Which column holds what. A column whose field is null is left out. */
export interface ColumnChoice {
  readonly column: number;
  readonly heading: string;
  readonly field: ColumnFieldId | null;
  /** The file has headings, and this column stands beyond the last of them. */
  readonly beyond?: true;
  /** The field that this column names in so many words, where another column names it too and is read in its place. */
  readonly rivalOf?: ColumnFieldId;
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
  const mapped = columns.flatMap(({ column, heading, field }) => (field === null ? [] : [{ column, heading, field }]));
  const severalNotes = mapped.filter(({ field }) => field === 'notes').length > 1;
  const rivals = columns.flatMap(({ column, heading, field, rivalOf }) =>
    field === null && rivalOf !== undefined ? [{ column, heading, field: rivalOf }] : [],
  );
  const headed = columns.filter(({ field, beyond }) => beyond !== true || field !== null);
  const width = headed.reduce((most, { column }) => Math.max(most, column + 1), 0);
  const fields = new Set(mapped.map(({ field }) => field));
  const context = remembering(given, fields.has('more'));
  return (cells, row, problem) => {
    if (isTotalsRow(cells)) return { row, facts: {}, evidence: {}, faults: [], usable: false, totals: true };
    const draft = new RowDraft(row, context.from);
    if (problem !== undefined) draft.aboutRow(problem, 'question', cells.join(' '));
    const found: Cells = {};
    for (const choice of mapped) {
      const cell = cellOf(cells, choice);
      if (cell === undefined) continue;
      if (cell.field === 'notes' && severalNotes) draft.note(`${cell.heading}: ${cell.text}`);
      else found[cell.field] ??= cell;
    }
    const more = takeMore(found, fields, draft, context);
    askWhichOf(rivals, cells, found, draft);
    readCells(found, draft, context);
    if (found.vin === undefined) takeStrayVin(cells, columns, draft);
    if (found.notes) draft.note(found.notes.text);
    keepExtraCells(cells, width, context.usualCells, draft);
    const { notes, ...others } = more;
    if (notes !== undefined) draft.note(notes);
    Object.assign(draft.facts, others);
    return draft.finish(isIdentified(draft, cells));
  };
}

/** A VIN is recognized by what it is: a file may have it in the notes or behind the name of the car. */
function takeStrayVin(cells: readonly string[], columns: readonly ColumnChoice[], draft: RowDraft): void {
  const stray = draft.facts.vin === undefined ? strayVin(cells) : null;
  if (stray === null) return;
  const heading = columns.find(({ column }) => column === stray.column)?.heading ?? '';
  draft.set(
    'vin',
    stray.vin,
    { field: 'vin', column: stray.column, heading, text: cells[stray.column] ?? '' },
    'likely',
  );
}

/** A cell that states something. */
function cellOf(cells: readonly string[], { field, column, heading }: Omit<Cell, 'text'>): Cell | undefined {
  const raw = cells[column];
  if (raw === undefined || raw === '') return undefined;
  const text = unguardCell(raw).trim();
  const blank = field === 'title' ? isEmptyTitle(text) : isBlankCell(text);
  return blank ? undefined : { field, column, heading, text };
}

/** Of two columns with the same heading neither is the right one before somebody has said so, where they differ. */
function askWhichOf(
  rivals: readonly Omit<Cell, 'text'>[],
  cells: readonly string[],
  found: Cells,
  draft: RowDraft,
): void {
  for (const rival of rivals) {
    const other = cellOf(cells, rival);
    const taken = found[rival.field];
    if (other === undefined || other.text === taken?.text) continue;
    if (taken === undefined) {
      found[rival.field] = other;
      continue;
    }
    const message = `Two columns are headed for the same thing, and “${other.heading}” has ${shorten(other.text, 60)} here. Choose which of the two columns is meant.`;
    if (draft.decides(rival.field)) {
      draft.unread({ ...taken, text: `${taken.text} / ${other.text}` }, message);
      delete found[rival.field];
    } else draft.question(taken, message);
  }
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
function keepExtraCells(cells: readonly string[], width: number, usual: number | undefined, draft: RowDraft): void {
  if (cells.length <= width) return;
  const extra = cells.slice(width).filter((cell) => !isBlankCell(cell));
  // Blank cells at the end are harmless, unless other rows have none, or something in front of them does not fit its column.
  const longer = usual !== undefined && cells.length > usual;
  if (extra.length === 0 && !longer && !draft.hasUnread) return;
  const message = `This row has ${cells.length} cells under ${width} headings. A comma inside a value may have moved the cells after it: check them, or give the last column a heading.`;
  draft.aboutRow(message, 'question', extra.join(' | '));
  draft.moved(extra.join(' | '));
  if (extra.length > 0) draft.note(`Beyond the last heading: ${extra.join(' | ')}`);
}

function isIdentified(draft: RowDraft, cells: readonly string[]): boolean {
  const { vin, lotNumber, make, model, pageUrl } = draft.facts;
  if ([vin, lotNumber, make, model, pageUrl].some((name) => name !== undefined)) return true;
  const message = 'Nothing here says which lot it is. Write a VIN, a lot number, a make or a model into the row.';
  draft.aboutRow(message, 'row', cells.filter((cell) => !isBlankCell(cell)).join(' | '));
  return false;
}
