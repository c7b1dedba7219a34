import { useMemo, useState } from 'preact/hooks';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { parseMoney } from '../../../src/domain/money/parse-money.ts';
import { refuse } from '../../../src/domain/outcome.ts';
import { readResult, type TypedResult } from '../../../src/domain/sale/read-result.ts';
import { sayAction, sayResult } from '../../../src/domain/sale/result-words.ts';
import { sayTime } from '../../../src/domain/time/say-time.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useSaleLog } from '../../../src/ui/hooks/use-sale-log.ts';
import { QuickLine } from '../../../src/ui/inputs/quick-line.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';

const RECEIPTS = 6;

/** What we did and saw at the sale, and how it ended. Headroom never bids: it keeps what its user says that he did. */
export function SaleLogPart({ lot }: { lot: LotState }) {
  const { setup, say } = useWorkspace();
  const standings = useMemo(() => standingsUnder(setup), [setup]);
  const log = useSaleLog(standings.of);
  const [who, setWho] = useState<string>();
  const result = lot.sale?.result;
  const bids = [...(lot.sale?.bids ?? [])].reverse();
  const seen = (action: 'confirmation-seen' | 'result-seen') => async () => {
    const sentence = await log.bid(lot, { action });
    if (sentence !== null) say(sentence);
  };
  return (
    <fieldset class="stack">
      <legend>At the sale</legend>
      {result && (
        <p class="note">
          <strong>{sayResult(result.result)}</strong>
          <span class="quiet small">
            {' '}
            recorded {sayTime(result.notedAt, setup.store.zone)} by {result.author}
          </span>
        </p>
      )}
      <QuickLine<TypedResult>
        label={result ? 'Correct the result' : 'How it ended'}
        button="Save"
        placeholder="w 12500"
        read={readResult}
        onKeep={(typed, again) => log.result(lot, typed, again, who)}
        hint="w won at, l lost at, n not sold, p pending, x withdrawn, u unknown, nobody watched"
      />
      <QuickLine<Cents>
        label="Our live bid"
        button="Record"
        placeholder="12,500"
        read={readBid}
        onKeep={(amount) => log.bid(lot, { action: 'live-bid', cents: amount, ...(who && { by: who }) })}
      />
      <TextInput label="Who bid, if not you" value={who} longest={80} onCommit={setWho} />
      <div class="row">
        <button type="button" onClick={seen('confirmation-seen')}>
          Confirmation seen
        </button>
        <button type="button" onClick={seen('result-seen')}>
          Result seen
        </button>
      </div>
      {bids.length > 0 && (
        <ul class="plain-list small" aria-label="Receipts">
          {bids.slice(0, RECEIPTS).map((bid) => (
            <li key={bid.entry}>
              {sayAction(bid)}, {sayTime(bid.at, setup.store.zone)}
              {bid.picture && ', with a picture'}
            </li>
          ))}
        </ul>
      )}
      <p class="small">
        <a href={`#/history/${lot.id}`}>Full history, files and evidence</a>
        {bids.length > RECEIPTS && <span class="quiet"> ({bids.length - RECEIPTS} more receipts)</span>}
      </p>
    </fieldset>
  );
}

function readBid(text: string) {
  const amount = parseMoney(text);
  return amount.ok && amount.value <= 0 ? refuse('not-positive', 'A bid must be above $0.') : amount;
}
