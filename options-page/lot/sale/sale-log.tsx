import { useState } from 'preact/hooks';
import type { LotAct } from '../../../src/acts/act.ts';
import { readBid } from '../../../src/acts/read-bid.ts';
import { person } from '../../../src/domain/bid/person-words.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import { readResult, type TypedResult } from '../../../src/domain/sale/read-result.ts';
import { sayAction, sayEnd } from '../../../src/domain/sale/result-words.ts';
import type { Instant } from '../../../src/domain/time/instant.ts';
import { sayTime } from '../../../src/domain/time/say-time.ts';
import { isCanceled, isOver } from '../../../src/folds/bid-given.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { QuickLine } from '../../../src/ui/inputs/quick-line.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';

const RECEIPTS = 6;

/** What we did and saw at the sale, and how it ended. Headroom never bids: it keeps what its user says that he did. */
export function SaleLogPart({ lot, now }: { lot: LotState; now: Instant }) {
  const { setup } = useWorkspace();
  const { send, pending, clear } = useAskedAct(lot);
  const [who, setWho] = useState<string>();
  const result = lot.sale?.result;
  const over = isOver(lot, now);
  const bids = [...(lot.sale?.bids ?? [])].reverse();
  /** Null when it is settled; else a word for under the line, whose text stays. The question itself stands below. */
  const kept = async (act: LotAct) => ((await send(act)) ? null : NOT_YET);
  const ended = ({ result: typed, by }: TypedResult): LotAct => ({
    do: 'ended',
    result: typed,
    by,
    bidder: who,
    corrects: result?.entry ?? null,
    ...(!over && { early: true }),
  });
  const line = (
    <QuickLine<TypedResult>
      label={result ? 'Correct the result' : 'How it ended'}
      button="Save"
      placeholder="w 12500"
      read={readResult}
      onKeep={(typed) => kept(ended(typed))}
      hint="w won at, l lost at, n not sold, p pending, x withdrawn, u unknown, nobody watched"
    />
  );
  return (
    <fieldset class="stack">
      <legend>At the sale</legend>
      {result && (
        <p class="note">
          <strong>{sayEnd(result.result, isCanceled(lot))}</strong>
          <span class="quiet small">
            {' '}
            recorded {sayTime(result.notedAt, setup.store.zone)} by {person(result.author)}
          </span>
        </p>
      )}
      {over ? (
        line
      ) : (
        <details>
          <summary>Ended early</summary>
          {line}
        </details>
      )}
      <QuickLine<Cents>
        label="Our live bid"
        button="Record"
        placeholder="12,500"
        read={readBid}
        onKeep={(amount) => kept({ do: 'bid', how: 'live', cents: amount, by: who })}
      />
      <Unkept pending={pending} onAct={send} onLeave={clear} />
      <TextInput label="Who bid, if not you" value={who} longest={80} onCommit={setWho} />
      <div class="row">
        <button type="button" onClick={() => void send({ do: 'saw', what: 'confirmation-seen', says: 'accepted' })}>
          Confirmation seen
        </button>
        <button type="button" onClick={() => void send({ do: 'saw', what: 'result-seen' })}>
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

const NOT_YET = 'Not saved yet: see below.';
