import { lastReading } from '../../domain/time/close-time.ts';
import type { LotState } from '../../folds/lot-state.ts';

/** Whether a lot has closed and nobody has said how; one that waits for the seller's word is still to be said. */
export function isOpenClosing({ facts, sale }: LotState, now: number): boolean {
  if (facts.close === undefined || lastReading(facts.close) > now) return false;
  return sale?.result === undefined || sale.result.result.ended === 'pending';
}

/** By their close, the earliest first; ties by the lot's id. */
export function byClose(a: LotState, b: LotState): number {
  return (a.facts.close?.instant ?? 0) - (b.facts.close?.instant ?? 0) || (a.id < b.id ? -1 : 1);
}
