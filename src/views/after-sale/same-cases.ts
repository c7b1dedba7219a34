import type { Dispute } from '../../domain/dispute/dispute.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { DisputeState } from '../../journal/states/after-sale-state.ts';

/**
 * Other disputes about a lot, of the same side and for the same reason. "Other reason" is none, so two of those may well be
 * two cases.
 */
export function sameCases(
  { after }: Pick<LotState, 'after'>,
  { side, reason, entry }: Pick<Dispute, 'side' | 'reason'> & { readonly entry?: string | undefined },
): readonly DisputeState[] {
  if (reason === 'other') return [];
  return (after?.disputes ?? []).filter(
    (other) => other.entry !== entry && other.side === side && other.reason === reason,
  );
}
