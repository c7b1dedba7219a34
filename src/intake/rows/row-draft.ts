import type { Evidence } from '../../domain/lot/evidence.ts';
import type { LotFacts, LotField } from '../../domain/lot/lot.ts';
import type { UnreadCell } from '../../domain/lot/unread-cell.ts';
import type { ColumnFieldId } from '../columns/column-fields.ts';
import type { CellFault, RowReading } from './row-reading.ts';
import { shorten } from './shorten.ts';

/** A cell that states something. */
export interface Cell {
  readonly field: ColumnFieldId;
  readonly column: number;
  readonly heading: string;
  readonly text: string;
}

const LONGEST_NOTES = 4000;
const LONGEST_EVIDENCE = 400;
const LONGEST_SHOWN = 200;

/** Cells that decide about money, by the fact they fill. */
const DECIDES: Partial<Record<ColumnFieldId, UnreadCell['field']>> = {
  retailLow: 'retail',
  retailLikely: 'retail',
  retailHigh: 'retail',
  reconLow: 'recon',
  reconLikely: 'recon',
  reconHigh: 'recon',
  transport: 'transport',
  increment: 'increment',
  funding: 'funding',
};

/** Two cells of one fact are told together. */
function withCell(cells: readonly UnreadCell[] = [], { field, text }: UnreadCell): UnreadCell[] {
  const before = cells.find((cell) => cell.field === field);
  const told = before === undefined ? text : shorten(`${before.text} / ${text}`, 200);
  return [...cells.filter((cell) => cell !== before), { field, text: told }];
}

/** Collects what a row says. What can't be read goes to the notes, so that nothing the file said is lost. */
export class RowDraft {
  readonly facts: LotFacts = {};
  readonly #evidence: Record<string, Evidence> = {};
  readonly #faults: CellFault[] = [];
  readonly #notes: string[] = [];
  readonly #unread: string[] = [];
  readonly #row: number;
  readonly #from: 'file' | 'pasted';

  constructor(row: number, from: 'file' | 'pasted') {
    this.#row = row;
    this.#from = from;
  }

  /** @param sure how sure the value is; the evidence is left out where the cell's text is the value itself */
  set<Field extends LotField>(
    field: Field,
    value: LotFacts[Field],
    cell: Cell,
    sure: Evidence['sure'] = 'certain',
  ): void {
    this.facts[field] = value;
    if (sure === 'certain' && String(value) === cell.text) return;
    this.#evidence[field] = { from: this.#from, text: shorten(cell.text, LONGEST_EVIDENCE), sure };
  }

  /** Whether a cell could not be read, or was not understood. */
  get hasUnread(): boolean {
    return this.#faults.some(({ severity }) => severity === 'unread');
  }

  /** Whether a column decides about money. */
  decides(field: ColumnFieldId): boolean {
    return DECIDES[field] !== undefined;
  }

  question(cell: Cell, message: string): void {
    this.#fault(cell, message, 'question');
  }

  unread(cell: Cell, message: string): void {
    this.#fault(cell, message, 'unread');
    this.#unread.push(`${cell.heading}: ${cell.text}`);
    const field = DECIDES[cell.field];
    if (field !== undefined) this.facts.unread = withCell(this.facts.unread, { field, text: shorten(cell.text, 200) });
  }

  /** The cells of the row may stand under the wrong headings; none of its figures counts before somebody has looked. */
  moved(text: string): void {
    this.facts.unread = withCell(this.facts.unread, { field: 'row', text: shorten(text, 200) });
  }

  /** The cell was not understood, but its words are kept in a field of its own and need no note. */
  unsettled(cell: Cell, message: string): void {
    this.#fault(cell, message, 'unread');
  }

  /** Keeps text that belongs to no field of its own. */
  note(text: string): void {
    this.#notes.push(text);
  }

  aboutRow(message: string, severity: 'question' | 'row', text = ''): void {
    this.#faults.push({ column: null, heading: '', text: shorten(text, LONGEST_SHOWN), message, severity });
  }

  finish(usable: boolean): RowReading {
    const notes = [...this.#notes, ...this.#unread].join('\n');
    if (notes.length > LONGEST_NOTES) {
      this.aboutRow(
        `The notes of this row have ${notes.length.toLocaleString('en-US')} characters; the first ${LONGEST_NOTES.toLocaleString('en-US')} are saved.`,
        'question',
      );
    }
    if (notes !== '') this.facts.notes = shorten(notes, LONGEST_NOTES);
    return { row: this.#row, facts: this.facts, evidence: this.#evidence, faults: this.#faults, usable };
  }

  #fault({ column, heading, text }: Cell, message: string, severity: 'unread' | 'question'): void {
    this.#faults.push({ column, heading, text: shorten(text, LONGEST_SHOWN), message, severity });
  }
}
