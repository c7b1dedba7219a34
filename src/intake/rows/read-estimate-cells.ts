import { rangeFault } from '../../domain/lot/not-meant.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import type { Estimate } from '../../domain/money/estimate.ts';
import { PPM, ppm } from '../../domain/money/rate.ts';
import { readAmount } from './read-amount.ts';
import type { RowContext } from './row-context.ts';
import type { Cell, RowDraft } from './row-draft.ts';

export interface EstimateCells {
  readonly low?: Cell | undefined;
  readonly likely?: Cell | undefined;
  readonly high?: Cell | undefined;
}

/** What a recon column becomes: the file does not say what needs doing. */
export const RECON_LABEL = 'Recon';

export function readRetailCells(cells: EstimateCells, draft: RowDraft, context: RowContext): void {
  const estimate = readEstimate(cells, draft, context);
  if (estimate === undefined) return;
  const fault = rangeFault(estimate.value, 'retail');
  if (fault === undefined) draft.set('retail', estimate.value, estimate.cell, estimate.sure);
  else draft.unread(estimate.cell, fault.message);
}

export function readReconCells(cells: EstimateCells, draft: RowDraft, context: RowContext): void {
  const estimate = readEstimate(cells, draft, context);
  if (estimate === undefined) return;
  const line = { label: RECON_LABEL, amount: estimate.value, chance: ppm(PPM) };
  draft.set('recon', [line], estimate.cell, estimate.sure);
}

/** Low, likely and high as far as they can be read and go in that order; never a figure that nobody wrote, unless asked about. */
function readEstimate(cells: EstimateCells, draft: RowDraft, context: RowContext) {
  if (cells.low === undefined && cells.likely === undefined && cells.high === undefined) return undefined;
  const low = amountOf(cells.low, draft, context);
  const likely = amountOf(cells.likely, draft, context);
  const high = amountOf(cells.high, draft, context);
  if (likely === undefined) return midpoint(low, high, draft);
  const value: Estimate = { likely: likely.cents };
  if (low !== undefined) {
    if (low.cents <= likely.cents) value.low = low.cents;
    else draft.unread(low.cell, 'This low figure is above the likely one. Correct one of them.');
  }
  if (high !== undefined) {
    if (high.cents >= likely.cents) value.high = high.cents;
    else draft.unread(high.cell, 'This high figure is below the likely one. Correct one of them.');
  }
  return { value, cell: together(likely.cell, cells), sure: 'certain' as const };
}

/** One cell with the text of all three. */
function together(cell: Cell, { low, likely, high }: EstimateCells): Cell {
  if (low === undefined && high === undefined) return cell;
  return { ...cell, text: [low, likely, high].flatMap((one) => one?.text ?? []).join(' / ') };
}

interface ReadAmount {
  readonly cents: Cents;
  readonly cell: Cell;
}

function midpoint(low: ReadAmount | undefined, high: ReadAmount | undefined, draft: RowDraft) {
  const only = low ?? high;
  if (only === undefined) return undefined;
  if (low === undefined || high === undefined) {
    draft.unread(only.cell, 'There is no likely figure beside it. Enter the likely one.');
    return undefined;
  }
  if (low.cents > high.cents) {
    draft.unread(low.cell, 'This low figure is above the high one. Correct one of them.');
    draft.unread(high.cell, 'This high figure is below the low one. Correct one of them.');
    return undefined;
  }
  const cell = { ...low.cell, text: `${low.cell.text} / ${high.cell.text}` };
  draft.question(cell, 'There is no likely figure, so the middle of low and high was used. Enter your own.');
  const likely = cents(Math.round((low.cents + high.cents) / 2));
  return { value: { low: low.cents, likely, high: high.cents }, cell, sure: 'doubtful' as const };
}

function amountOf(cell: Cell | undefined, draft: RowDraft, context: RowContext): ReadAmount | undefined {
  if (cell === undefined) return undefined;
  const amount = readAmount(cell, context);
  if (amount.ok) return { cents: amount.value, cell };
  draft.unread(cell, amount.message);
  return undefined;
}
