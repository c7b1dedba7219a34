import type { LotAct } from '../../../src/acts/act.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { type Pending, useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { bidOffer, otherOffers, proxyWords } from '../../../src/views/lots/act-offers.ts';
import { stopOfStanding } from '../../../src/views/lots/bids.ts';
import { previewAct } from '../../../src/views/lots/do-lot-act.ts';
import type { LotWorks } from '../../../src/views/lots/standing.ts';
import { AmountActs } from '../../now/amount-acts.tsx';
import type { RowPanelProps } from './row-panel.tsx';

/** A bid over the max wants the reason why it stays: the field for it is there at once, above the other ways out. */
function useAskedRisk(lot: LotState, works: LotWorks): Pending | undefined {
  const { setup } = useWorkspace();
  const now = instant(Date.now());
  const risk = otherOffers(works.bids.at(lot, now)).find((other) => other.act.do === 'accept-risk');
  if (risk === undefined) return undefined;
  const decision = previewAct(lot, risk.act, { setup, now, standings: works });
  if (decision.as !== 'ask') return undefined;
  // Nobody has pressed a button that would say what is asked about.
  return { act: risk.act, question: { ...decision.question, words: 'Why does it stay over max?' } };
}

/** What was bid: an amount and one button, and what else can be said of a bid that is in. */
export function BidInRow({ lot, works, start, onClose }: RowPanelProps) {
  const asked = useAskedRisk(lot, works);
  const { send, pending, clear } = useAskedAct(lot, start ?? asked);
  const bid = works.bids.at(lot, instant(Date.now()));
  const offered = bidOffer(bid, stopOfStanding(works.of(lot)))?.cents;
  const stands = bid.own.proxy;
  const act = async (wanted: LotAct) => {
    if (await send(wanted)) onClose();
  };
  // What is asked already needs no button that asks it.
  const words = otherOffers(bid).filter((other) => pending === undefined || other.act.do !== 'accept-risk');
  return (
    <>
      <Unkept pending={pending} onAct={act} onLeave={clear} />
      <div class="row-panel-acts">
        <AmountActs
          label={stands === undefined ? 'Your proxy' : 'Another proxy'}
          start={offered}
          acts={[
            {
              words: (_, cents) => proxyWords(bid, cents),
              act: (cents) =>
                cents === null
                  ? null
                  : { do: 'bid', how: 'proxy', cents, was: stands?.cents ?? null, offered: cents === offered },
              main: true,
            },
          ]}
          onAct={act}
        />
        {words.map((other) => (
          <button key={other.words} type="button" onClick={() => act(other.act)}>
            {other.words}
          </button>
        ))}
        {stands !== undefined && !words.some((other) => other.act.do === 'withdraw') && (
          <button type="button" onClick={() => act({ do: 'withdraw' })}>
            Withdraw
          </button>
        )}
      </div>
    </>
  );
}
