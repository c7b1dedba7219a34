import type { LotField } from '../../domain/lot/lot.ts';

/** Something a column of a table can hold. */
export interface ColumnField {
  readonly id: string;
  /** As the mapping shows it, and as the tool's own files head the column. */
  readonly label: string;
  /** Other headings that say the same, separated by "; ": case, blanks and punctuation do not matter. */
  readonly words: string;
  /** How a cell is read, in a sentence for the user. */
  readonly how: string;
  readonly example: string;
  /** The facts of a lot that come out of it, alone or together with other columns. */
  readonly fills: readonly LotField[];
  /** Whether several columns may hold it; they are then kept one under the other. */
  readonly many?: true;
}
