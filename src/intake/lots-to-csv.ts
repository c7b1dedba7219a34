import { attempt, type CantWorkOut } from '../domain/attempt.ts';
import type { LotFacts, LotField } from '../domain/lot/lot.ts';
import type { LotState } from '../folds/lot-state.ts';
import { isSameFact } from '../folds/same-fact.ts';
import type { ColumnField } from './columns/column-field.ts';
import { COLUMN_FIELDS, type ColumnFieldId } from './columns/column-fields.ts';
import { csvRow } from './csv/csv-row.ts';
import { type LotCell, lotCells } from './rows/lot-cells.ts';
import type { ReadContext } from './rows/read-context.ts';
import { type ColumnChoice, type RowReader, rowReader } from './rows/read-row.ts';

/** A column beside the lot's own facts, such as its max bid. Left out when such a file is read. */
export interface ExtraColumn {
  readonly heading: string;
  readonly cell: (lot: Pick<LotState, 'facts'>) => LotCell | undefined;
}

/** Columns that the tool's own files do not need: their facts stand in others. */
const NOT_WRITTEN: readonly ColumnFieldId[] = ['car', 'kilometres', 'closeDate', 'closeTime', 'timeLeft'];
const COLUMNS: readonly ColumnField[] = COLUMN_FIELDS.filter(({ id }) => !NOT_WRITTEN.includes(id));
const MORE: ColumnFieldId = 'more';

const CHOICES: readonly ColumnChoice[] = COLUMNS.map(({ id, label }, column) => ({
  column,
  heading: label,
  field: id as ColumnFieldId,
}));

export type CsvContext = Omit<ReadContext, 'from'>;

/**
 * Lots as a CSV file (RFC 4180, with a byte-order mark so that spreadsheets take it for UTF-8) that opens safely in a
 * spreadsheet and reads back as the very same facts. Yields some lines at a time; join them for the whole.
 * @param context as for reading: what reads differently than it was is written out in the last column
 */
export function* lotsToCsv(
  lots: Iterable<Pick<LotState, 'facts'>>,
  context: CsvContext,
  extra: readonly ExtraColumn[] = [],
): Generator<string> {
  const texts = (labels: readonly string[]): LotCell[] => labels.map((text) => ({ text, kind: 'text' }));
  yield `\ufeff${csvRow(texts([...COLUMNS.map(({ label }) => label), ...extra.map(({ heading }) => heading)]))}`;
  const readBack = rowReader(CHOICES, { ...context, from: 'file' });
  for (const lot of lots) {
    const cells = attempt(() => cellsOf(lot.facts, context, readBack));
    yield csvRow([...(cells.ok ? cells.value : bareCells(lot.facts, cells)), ...extra.map(({ cell }) => cell(lot))]);
  }
}

/** A row that says which lot it is and why there is no more of it, so that none is missing from the file without a word. */
function bareCells({ vin, make, model, lotNumber }: LotFacts, { message }: CantWorkOut): (LotCell | undefined)[] {
  const known: Partial<Record<string, string | undefined>> = { vin, make, model, lotNumber, notes: message };
  return COLUMNS.map(({ id }) => {
    const text = known[id];
    return text === undefined ? undefined : { text, kind: 'text' };
  });
}

function cellsOf(facts: LotFacts, context: CsvContext, readBack: RowReader): (LotCell | undefined)[] {
  const shown = lotCells(facts, context);
  const cells = COLUMNS.map(({ id }) => shown[id as ColumnFieldId]);
  const more = factsBeyond(
    facts,
    readBack(
      cells.map((cell) => cell?.text ?? ''),
      1,
    ).facts,
  );
  if (more === undefined) return cells;
  return COLUMNS.map(({ id }, i) => (id === MORE ? { text: more, kind: 'text' } : cells[i]));
}

/**
 * What the cells alone would not bring back. Facts that share a column go together, so that none is read by itself; so do
 * a fact and what could not be read of it, because the one settles the other.
 */
function factsBeyond(facts: LotFacts, read: LotFacts): string | undefined {
  const fields = Object.keys({ ...facts, ...read }) as LotField[];
  const changed = fields.filter((field) => !isSameFact(facts[field], read[field]));
  const doubted = (facts.unread ?? []).flatMap(({ field }): LotField[] => (field === 'row' ? [] : [field]));
  const groups = COLUMNS.filter(({ fills }) => fills.some((field) => changed.includes(field))).flatMap(
    ({ fills }) => fills,
  );
  const beyond = fields.filter(
    (field) =>
      facts[field] !== undefined && (changed.includes(field) || groups.includes(field) || doubted.includes(field)),
  );
  return beyond.length === 0
    ? undefined
    : JSON.stringify(Object.fromEntries(beyond.map((field) => [field, facts[field]])));
}
