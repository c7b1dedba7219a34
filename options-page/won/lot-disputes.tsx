import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { sayOutcome } from '../../src/journal/happenings/after-sale-words.ts';

/** The disputes of one lot, and the way to open another. */
export function LotDisputes({ lot }: { lot: LotState }) {
  const disputes = lot.after?.disputes ?? [];
  return (
    <section class="stack">
      <h2>Disputes</h2>
      {disputes.length > 0 && (
        <ul class="won-steps">
          {disputes.map((dispute) => (
            <li key={dispute.entry} class="won-step">
              <a href={`#/dispute/${dispute.entry}`}>{REASON_WORDS[dispute.reason]}</a>
              <span>{dispute.side === 'ours' ? 'Ours' : 'Against us'}</span>
              <span class="small">{dispute.outcome ? sayOutcome(dispute.outcome) : 'Open'}</span>
              <span />
            </li>
          ))}
        </ul>
      )}
      <p class="no-print">
        <a class="button" href={`#/open-dispute/${lot.id}`}>
          Open a dispute
        </a>
      </p>
    </section>
  );
}
