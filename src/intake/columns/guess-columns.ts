import { isBlankCell } from './blank-cell.ts';
import { type ColumnFieldId, columnField } from './column-fields.ts';
import { areVinsSure, type CellLook, type KnownNames, LOOKS_OF, lookOfCells } from './look-of-cells.ts';
import { type HeadingMatch, readHeading } from './read-heading.ts';

/** What a column is taken for; the user can choose otherwise for each. */
export interface ColumnGuess {
  /** Position in the row, from 0. */
  readonly column: number;
  /** As the file heads it; "Column 3" where it has no headings. */
  readonly heading: string;
  /** Null: the column is left out unless the user says what it is. */
  readonly field: ColumnFieldId | null;
  readonly sure: 'certain' | 'likely' | 'doubtful';
  /** The file has headings, and this column stands beyond the last of them. */
  readonly beyond?: true;
  /** The field that this column names in so many words, where another column is read for it. */
  readonly rivalOf?: ColumnFieldId;
}

/** What cells alone say about a column that has no telling heading. */
const FIELD_OF_LOOK: Readonly<Partial<Record<CellLook, ColumnFieldId>>> = {
  vin: 'vin',
  year: 'year',
  car: 'car',
  miles: 'miles',
  money: 'priceNow',
  'date-time': 'closes',
  date: 'closeDate',
  time: 'closeTime',
  title: 'title',
  venue: 'venue',
  url: 'pageUrl',
};

/** Nobody has more; what stands beyond is kept as text of its row. */
const MOST_COLUMNS = 2000;

const ORDER = { certain: 0, likely: 1, doubtful: 2 } as const;

/**
 * Guesses what each column holds, from its heading and from how its cells look. Two columns for the same field are
 * settled for the surer, then for the one further left; the other stays to be chosen.
 * @param headings null when the table has none
 * @param rows some rows from the beginning; fifty are plenty
 */
export function guessColumns(
  headings: readonly string[] | null,
  rows: readonly (readonly string[])[],
  names: KnownNames = { venues: [], titles: [] },
): readonly ColumnGuess[] {
  const width = widthOf(headings, rows);
  const guesses = Array.from({ length: width }, (_, column): ColumnGuess => {
    const cells = rows.map((row) => row[column] ?? '');
    const heading = headings?.[column]?.trim() || `Column ${column + 1}`;
    const look = lookOfCells(cells, names);
    const match = headings === null ? null : readHeading(headings[column] ?? '');
    // What stands beyond the headings has most often been moved there; only the user can say that it is a column.
    if (headings !== null && column >= headings.length)
      return { column, heading, field: null, sure: 'doubtful', beyond: true };
    const { field, sure } = match === null ? byLook(look, cells) : byHeading(match, look, cells);
    return { column, heading, field, sure };
  });
  return withoutRivals(guesses);
}

/** A cell beyond the headings is a column only if half of the rows have one; else its row is at fault. */
function widthOf(headings: readonly string[] | null, rows: readonly (readonly string[])[]): number {
  const widths = rows.map((row) => row.findLastIndex((cell) => !isBlankCell(cell)) + 1).sort((a, b) => a - b);
  const rowsReach = widths[headings === null ? widths.length - 1 : Math.floor(widths.length / 2)] ?? 0;
  return Math.min(Math.max(headings?.length ?? 0, rowsReach), MOST_COLUMNS);
}

type Guess = Pick<ColumnGuess, 'field' | 'sure'>;

function byLook(look: CellLook | null, cells: readonly string[]): Guess {
  const field = (look === null ? undefined : FIELD_OF_LOOK[look]) ?? null;
  const telling = look === 'vin' ? areVinsSure(cells) : look === 'car' || look === 'url' || look === 'miles';
  return { field, sure: telling ? 'likely' : 'doubtful' };
}

function byHeading(match: HeadingMatch, look: CellLook | null, cells: readonly string[]): Guess {
  // Seventeen characters with a right check digit are nothing else, whatever the column is called.
  if (look === 'vin' && match.field !== 'vin' && areVinsSure(cells)) return { field: 'vin', sure: 'likely' };
  const field = splitClose(match.field, look);
  const fits = look === null || (LOOKS_OF[field]?.includes(look) ?? true);
  if (match.exact) return { field, sure: fits ? 'certain' : 'doubtful' };
  // A heading that only contains the words does not outweigh cells that say something else.
  const contradicted = look === 'text' && LOOKS_OF[field] !== undefined;
  return fits && !contradicted ? { field, sure: 'likely' } : byLook(look, cells);
}

/** "End time" may head a whole date and time, and "Closes" only one of them. */
function splitClose(field: ColumnFieldId, look: CellLook | null): ColumnFieldId {
  if (field !== 'closes' && field !== 'closeDate' && field !== 'closeTime') return field;
  if (look === 'date-time') return 'closes';
  if (look === 'date') return 'closeDate';
  return look === 'time' ? 'closeTime' : field;
}

function withoutRivals(guesses: readonly ColumnGuess[]): readonly ColumnGuess[] {
  const taken = new Set<ColumnFieldId>();
  const kept = new Set<number>();
  const bySureness = [...guesses].sort((a, b) => ORDER[a.sure] - ORDER[b.sure] || a.column - b.column);
  for (const { field, column } of bySureness) {
    if (field === null || (taken.has(field) && columnField(field).many !== true)) continue;
    taken.add(field);
    kept.add(column);
  }
  return guesses.map((guess) => {
    const { field, sure, ...others } = guess;
    if (field === null || kept.has(guess.column)) return guess;
    return { ...others, sure, field: null, ...(sure === 'certain' && { rivalOf: field }) };
  });
}
