import type { Evidence } from '../../domain/lot/evidence.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';

/**
 * Something about a cell that the user should know:
 * - `unread`: the cell could not be read; its text is kept in the notes, the rest of the row stands;
 * - `question`: it was read and is kept, and deserves a look;
 * - `row`: nothing in the row says which lot it is, so it can't be taken.
 */
export interface CellFault {
  /** Position in the row, from 0; null when it is about the row as a whole. */
  readonly column: number | null;
  readonly heading: string;
  /** The cell as it was written; the beginning of it when it is long. */
  readonly text: string;
  /** A full sentence that says what to do. */
  readonly message: string;
  readonly severity: 'unread' | 'question' | 'row';
}

/** What one row came to. */
export interface RowReading {
  /** Row number as a spreadsheet counts, from 1. */
  readonly row: number;
  readonly facts: LotFacts;
  /** By field; a field whose value is the very text of its cell needs none. */
  readonly evidence: Readonly<Record<string, Evidence>>;
  readonly faults: readonly CellFault[];
  /** False when nothing in the row says which lot it is. */
  readonly usable: boolean;
  /** It adds up the rows above it, and is no lot. */
  readonly totals?: true;
}
