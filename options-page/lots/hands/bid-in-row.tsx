import type { LotAct } from '../../../src/acts/act.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { bidOffer, otherOffers, proxyWords } from '../../../src/views/lots/act-offers.ts';
import { stopOfStanding } from '../../../src/views/lots/bids.ts';
import { AmountActs } from '../../now/amount-acts.tsx';
import type { RowPanelProps } from './row-panel.tsx';

/** What was bid: an amount and one button, and what else can be said of a bid that is in. */
export function BidInRow({ lot, works, start, onClose }: RowPanelProps) {
  const { send, pending, clear } = useAskedAct(lot, start);
  const bid = works.bids.at(lot, instant(Date.now()));
  const offered = bidOffer(bid, stopOfStanding(works.of(lot)))?.cents;
  const stands = bid.own.proxy;
  const act = async (wanted: LotAct) => {
    if (await send(wanted)) onClose();
  };
  const words = otherOffers(bid);
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
