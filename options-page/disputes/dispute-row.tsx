import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import { sayOutcome } from '../../src/journal/happenings/after-sale-words.ts';
import { DueText } from '../../src/ui/after-sale/due-text.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';

/** One dispute of the list: until when, what is to be done, what is asked, what is missing or how it ended. */
export function DisputeRow({ shown, now }: { shown: ShownDispute; now: Instant }) {
  const { setup } = useWorkspace();
  const { lot, dispute, place, due, dues, missing } = shown;
  const { outcome } = dispute;
  return (
    <li class="dispute-row">
      {outcome === undefined ? (
        <DueText due={due} now={now} place={place} />
      ) : (
        <span class="due-text">
          <span class="strong">Closed</span>
          <span class="quiet small">{sayTime(outcome.at, setup.store.zone)}</span>
        </span>
      )}
      <span>
        <a class="strong" href={`#/dispute/${dispute.entry}`}>
          {lotTitle(lot.facts)}
        </a>
        <span class="dispute-sub">
          {REASON_WORDS[dispute.reason]} · {dispute.side === 'ours' ? 'our claim' : 'claim against us'} · {place.name}
        </span>
        {outcome === undefined && <span class="dispute-sub">{dues[0]?.what ?? 'Waiting for their answer'}</span>}
      </span>
      <span class="dispute-asked">
        {dispute.askedCents !== undefined && (
          <>
            <span class="figure">{formatMoney(dispute.askedCents)}</span> <span class="quiet small">claimed</span>
          </>
        )}
      </span>
      <span class="small">
        {outcome !== undefined ? (
          sayOutcome(outcome)
        ) : missing.length === 0 ? (
          'Nothing is missing'
        ) : (
          <>
            <span class="strong">Missing:</span> {missing.join(', ')}
          </>
        )}
      </span>
    </li>
  );
}
