import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import type { FactChange } from '../folds/fact-changes.ts';
import type { NewLot } from '../journal/happenings/watching.ts';
import type { PlannedRow } from './import-plan.ts';

/** Facts of a watched lot that a file knows better. */
export interface LotUpdate {
  readonly id: LotId;
  readonly set: LotFacts;
  readonly evidence: Readonly<Record<string, Evidence>>;
}

/** What an import writes to the journal. */
export interface ImportResult {
  /** Lots to be; they get their ids when they are written. */
  readonly add: readonly Omit<NewLot, 'id'>[];
  readonly change: readonly LotUpdate[];
}

interface Target {
  readonly facts: LotFacts;
  readonly evidence: Record<string, Evidence>;
}

/**
 * Turns a plan, with the user's choices in it, into what is written. An update of a row further up goes into the lot
 * that row brings in; where that row was skipped, so is its update.
 * @param from becomes the evidence of updated facts, which must not look as if they came from where the lot once did
 */
export function importResult(rows: readonly PlannedRow[], from: 'file' | 'pasted'): ImportResult {
  const add: Omit<NewLot, 'id'>[] = [];
  const change: LotUpdate[] = [];
  const targets = new Map<number, Target>();
  for (const { reading, seen, action } of rows) {
    if (!reading.usable || action === 'skip') continue;
    const { row } = reading;
    if (action === 'add' || seen === null || seen.kind === 'another-sale' || seen.kind === 'in-file-again') {
      const lot = { facts: { ...reading.facts }, evidence: { ...reading.evidence } };
      add.push(lot);
      targets.set(row, lot);
    } else if (seen.kind === 'watched') {
      const target = { facts: {}, evidence: {} };
      take(seen.changes, reading.evidence, target, from);
      change.push({ id: seen.lot, set: target.facts, evidence: target.evidence });
      targets.set(row, target);
    } else {
      const target = targets.get(seen.row);
      if (target !== undefined) take(seen.changes, reading.evidence, target, from);
    }
  }
  return { add, change: change.filter(({ set }) => Object.keys(set).length > 0) };
}

function take(
  changes: readonly FactChange[],
  evidence: Readonly<Record<string, Evidence>>,
  target: Target,
  from: Evidence['from'],
): void {
  for (const { field, after, taken } of changes) {
    if (!taken) continue;
    Object.assign(target.facts, { [field]: after });
    // A reading has no evidence of its own where the cell's text was the value itself.
    target.evidence[field] = evidence[field] ?? { from, text: String(after).slice(0, 400), sure: 'certain' };
  }
}
