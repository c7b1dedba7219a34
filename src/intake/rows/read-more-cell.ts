import { type LotFacts, type LotField, lotFactsSchema } from '../../domain/lot/lot.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { isSameFact } from '../../folds/same-fact.ts';
import { isBlankCell } from '../columns/blank-cell.ts';
import type { ColumnField } from '../columns/column-field.ts';
import { COLUMN_FIELDS, type ColumnFieldId } from '../columns/column-fields.ts';
import { lotCells } from './lot-cells.ts';
import { type Cells, readCells } from './read-cells.ts';
import type { RowContext } from './row-context.ts';
import { type Cell, RowDraft } from './row-draft.ts';

/** What the tool's own column says beyond the others. */
export interface More {
  readonly facts: LotFacts;
  /** Columns whose cells say nothing that `facts` does not say more fully. */
  readonly settled: ReadonlySet<ColumnFieldId>;
}

/**
 * Reads the column in which the tool keeps what the others have no room for. It holds only as long as the cells beside
 * it still say what they said: what somebody changed in a spreadsheet counts, whatever stands here.
 * @param mapped the fields that this file has columns for
 */
export function readMoreCell(
  cell: Cell,
  cells: Cells,
  mapped: ReadonlySet<ColumnFieldId>,
  context: RowContext,
): Outcome<More> {
  const stored = lotFactsSchema.safeParse(jsonIn(cell.text));
  if (!stored.success) {
    return refuse('unreadable', 'This can’t be used, so only the other columns are. Leave it as Headroom wrote it.');
  }
  const shown = shownCells(stored.data, mapped, context);
  const [now, then] = [factsIn(cells, context), factsIn(shown, context)];
  const facts: LotFacts = {};
  const settled = new Set<ColumnFieldId>();
  const columnsOf = (field: LotField) =>
    COLUMN_FIELDS.filter(({ id, fills }: ColumnField) => mapped.has(id as ColumnFieldId) && fills.includes(field));
  const isUnchanged = (field: LotField) => columnsOf(field).every(({ id }) => cells[id]?.text === shown[id]?.text);
  for (const field of Object.keys(stored.data) as LotField[]) {
    // Whoever made the file could otherwise plant a link that runs a script.
    if (field === 'pageUrl' && !/^https?:/i.test(stored.data.pageUrl ?? '')) continue;
    if (!isUnchanged(field) && !saysTheSame(field, now, then)) continue;
    Object.assign(facts, { [field]: stored.data[field] });
    for (const { id } of columnsOf(field)) settled.add(id);
  }
  // Whoever has filled in such a cell meanwhile has settled it.
  const unread = facts.unread?.filter(({ field }) => field === 'row' || isUnchanged(field)) ?? [];
  delete facts.unread;
  if (unread.length > 0) facts.unread = unread;
  return ok({ facts, settled });
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // Not JSON is as unusable as JSON of another shape.
    return undefined;
  }
}

/** The cells that a lot with these facts would have shown in the columns of this file. */
function shownCells(facts: LotFacts, mapped: ReadonlySet<ColumnFieldId>, context: RowContext): Cells {
  const shown: Cells = {};
  for (const [id, { text }] of Object.entries(lotCells(facts, context)) as [ColumnFieldId, { text: string }][]) {
    if (mapped.has(id) && !isBlankCell(text.trim()))
      shown[id] = { field: id, column: 0, heading: id, text: text.trim() };
  }
  return shown;
}

function factsIn(cells: Cells, context: RowContext): LotFacts {
  const draft = new RowDraft(0, 'file');
  readCells(cells, draft, context);
  return draft.facts;
}

/** A program that saved the file anew may have written an amount or a date in another way. */
function saysTheSame(field: LotField, a: LotFacts, b: LotFacts): boolean {
  if (a[field] === undefined || b[field] === undefined) return false;
  if (field === 'close') return a.close?.instant === b.close?.instant && a.close?.zone === b.close?.zone;
  return isSameFact(a[field], b[field]);
}
