import type { LotAct } from '../../src/acts/act.ts';
import { leadsOf } from '../../src/domain/alerts/lot-calls.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { bidOffer, otherOffers, proxyWords } from '../../src/views/lots/act-offers.ts';
import { AmountActs } from './amount-acts.tsx';
import { HandOver } from './hand-over.tsx';
import type { NowLot } from './now-lot.ts';
import { putOffChoices } from './put-off-choices.ts';
import { resultActs } from './result-acts.ts';

interface LotActsProps {
  readonly lot: NowLot;
  readonly people: readonly string[];
  /** Who uses this computer, where several are in a team. */
  readonly me?: string | undefined;
  readonly now: Instant;
  readonly onAct: (act: LotAct) => void;
}

const ADDED = [1, 2, 5, 10] as const;

/** Everything that can be done about one lot now, each with one press. */
export function LotActs({ lot, people, me, now, onAct }: LotActsProps) {
  const { setup } = useWorkspace();
  const { facts, sale } = lot.state;
  const bid = lot.bidAt(now);
  const open = bid.is !== 'ended';
  const puttable = putOffChoices(lot, leadsOf(lot, setup.alerts), now);
  const offered = bidOffer(bid, lot.stopAt)?.cents;
  const others = otherOffers(bid);
  const results = (early: boolean) => (
    <AmountActs
      label="Hammer price"
      start={facts.priceNow}
      acts={resultActs(sale?.result?.entry ?? null, early)}
      onAct={onAct}
    />
  );
  return (
    <div class="now-do">
      {open && (
        <AmountActs
          label={bid.own.proxy === undefined ? 'Your proxy' : 'Another proxy'}
          start={offered}
          acts={[
            {
              words: (_, cents) => proxyWords(bid, cents),
              act: (cents) => (cents === null ? null : { do: 'bid', how: 'proxy', cents, offered: cents === offered }),
              main: bid.loud,
            },
          ]}
          onAct={onAct}
        />
      )}
      {others.length > 0 && (
        <div class="now-acts">
          {others.map(({ words, act }) => (
            <button key={words} type="button" onClick={() => onAct(act)}>
              {words}
            </button>
          ))}
        </div>
      )}
      {open && !bid.mayHaveClosed ? (
        <details>
          <summary class="now-ended-early">Ended early</summary>
          {results(true)}
        </details>
      ) : (
        results(false)
      )}
      <fieldset class="now-row">
        <legend>Extended</legend>
        <div class="now-acts four">
          {ADDED.map((minutes) => (
            <button key={minutes} type="button" onClick={() => onAct({ do: 'extended', minutes, from: lot.close })}>
              <span class="visually-hidden">Extended by </span>
              {minutes} min
            </button>
          ))}
        </div>
      </fieldset>
      {open && (
        <fieldset class="now-row">
          <legend>Remind me again</legend>
          <div class="now-acts">
            {puttable.map(({ minutes, words }) => (
              <button key={minutes} type="button" onClick={() => onAct({ do: 'put-off', minutes })}>
                {words}
              </button>
            ))}
            <button type="button" onClick={() => onAct({ do: 'done' })}>
              No more reminders
            </button>
          </div>
        </fieldset>
      )}
      {open && me !== undefined && lot.mine !== true && (
        <button type="button" onClick={() => onAct({ do: 'have-it', as: me })}>
          I have it
        </button>
      )}
      {open && <HandOver handedTo={lot.handedTo} people={people} onAct={onAct} />}
    </div>
  );
}
