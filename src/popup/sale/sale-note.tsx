import { useState } from 'preact/hooks';
import type { LotAct } from '../../acts/act.ts';
import { readBid } from '../../acts/read-bid.ts';
import { offerWords } from '../../domain/alerts/offer.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Store } from '../../store/store.ts';
import { Unkept } from '../../ui/ask/unkept.tsx';
import { FieldFrame } from '../../ui/inputs/field.tsx';
import { bidOffer, otherOffers, proxyWords } from '../../views/lots/act-offers.ts';
import { stopOfStanding } from '../../views/lots/bids.ts';
import type { Standings } from '../../views/lots/standing.ts';
import { EndActs } from './end-acts.tsx';
import { useNotedAct } from './use-noted-act.ts';

export interface SaleNoteProps {
  readonly store: Store;
  readonly setup: Setup;
  readonly lot: LotState;
  readonly standings: Standings;
  readonly now: Instant;
  /** Called with the lot as it is after something was kept. */
  readonly onKept: (lot: LotState) => void;
}

/** What was done or seen at the sale of one lot, or how it ended, in one tap each. */
export function SaleNote({ store, setup, lot, standings, now, onKept }: SaleNoteProps) {
  const [text, setText] = useState('');
  const [picture, setPicture] = useState(true);
  const [fault, setFault] = useState<string>();
  const { send, pending, said, undo, clear } = useNotedAct({ store, setup, standings, lot, picture, onKept });
  const state = standings.bids.at(lot, now);
  const open = state.is !== 'ended';
  const offer = bidOffer(state, stopOfStanding(standings.of(lot)));
  const typed = parseMoney(text);
  const amount = typed.ok && typed.value > 0 ? typed.value : null;

  /** What was typed stays in the field until it is kept, whatever happens. */
  const act = async (wanted: LotAct) => {
    setFault(undefined);
    if (await send(wanted)) setText('');
  };
  const bid = (how: 'proxy' | 'live') => {
    const read = readBid(text);
    if (!read.ok) return setFault(read.message);
    void act({ do: 'bid', how, cents: read.value, ...(how === 'proxy' && { was: lot.facts.proxy ?? null }) });
  };
  const seen = (what: 'confirmation-seen' | 'result-seen') => {
    const read = text.trim() === '' ? null : readBid(text);
    if (read?.ok === false) return setFault(read.message);
    void act({ do: 'saw', what, cents: read?.value, ...(what === 'confirmation-seen' && { says: 'accepted' }) });
  };
  const ends = (early: boolean) => (
    <EndActs
      text={text}
      fallback={lot.facts.priceNow}
      corrects={lot.sale?.result?.entry ?? null}
      early={early}
      onFault={setFault}
      onAct={act}
    />
  );

  return (
    <form
      class="stack sale-note"
      onSubmit={(event) => {
        event.preventDefault();
        if (open) bid('proxy');
      }}
    >
      <FieldFrame label="Amount" fault={fault}>
        {({ id, describedBy, invalid }) => (
          <input
            id={id}
            inputMode="decimal"
            autoComplete="off"
            placeholder={placeholder(offer?.cents ?? lot.facts.priceNow)}
            value={text}
            aria-describedby={describedBy}
            aria-invalid={invalid ? 'true' : undefined}
            onInput={(event) => {
              setText(event.currentTarget.value);
              setFault(undefined);
            }}
          />
        )}
      </FieldFrame>
      <Unkept pending={pending} onAct={act} onLeave={clear} />
      {open && (
        <div class="row">
          {offer !== null && text.trim() === '' ? (
            <button
              type="button"
              class="main"
              onClick={() => void act({ do: 'bid', how: 'proxy', cents: offer.cents, offered: true })}
            >
              {offerWords(offer)}
            </button>
          ) : (
            <button type="submit" class="main">
              {proxyWords(state, amount)}
            </button>
          )}
          <button type="button" onClick={() => bid('live')}>
            Live bid
          </button>
          {lot.facts.proxy !== undefined && (
            <button type="button" onClick={() => void act({ do: 'withdraw' })}>
              Withdraw
            </button>
          )}
          {otherOffers(state).map(({ words, act: other }) => (
            <button key={words} type="button" onClick={() => void act(other)}>
              {words}
            </button>
          ))}
        </div>
      )}
      {open && !state.mayHaveClosed ? (
        <details>
          <summary>Ended early</summary>
          {ends(true)}
        </details>
      ) : (
        ends(false)
      )}
      <div class="row">
        <button type="button" onClick={() => seen('confirmation-seen')}>
          Confirmation seen
        </button>
        {!open && (
          <button type="button" onClick={() => seen('result-seen')}>
            Result seen
          </button>
        )}
      </div>
      <label class="row small">
        <input type="checkbox" checked={picture} onChange={(event) => setPicture(event.currentTarget.checked)} />
        With a picture of the page in front
      </label>
      <p role="status" class="small row">
        {said.words}
        {said.undo.length > 0 && (
          <button type="button" class="plain" onClick={() => void undo()}>
            Undo
          </button>
        )}
      </p>
    </form>
  );
}

const placeholder = (amount: Cents | undefined) => (amount === undefined ? '12,500' : formatMoney(amount));
