import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { LotAct } from '../../../src/acts/act.ts';
import type { BidState } from '../../../src/domain/bid/bid-state.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { bidOffer, proxyWords } from '../../../src/views/lots/act-offers.ts';
import { AmountActs } from '../../now/amount-acts.tsx';

interface PlaceProxyProps {
  readonly lot: LotState;
  readonly bid: BidState;
  /** Where to stop: null when nothing is to be bid; undefined when it can't be worked out. */
  readonly stop: Cents | null | undefined;
}

/** The proxy that was entered at the venue, said with one press where the amount is right already; as in a row of the list. */
export function PlaceProxy({ lot, bid, stop }: PlaceProxyProps) {
  const { send, pending, clear } = useAskedAct(lot);
  const place = useRef<HTMLDivElement>(null);
  const [kept, setKept] = useState(0);
  // What had the focus has gone with it. Not to the new button: an Enter that is held down must not press that.
  useLayoutEffect(() => {
    if (kept > 0 && document.activeElement === document.body) place.current?.focus();
  }, [kept]);
  const act = async (wanted: LotAct) => {
    if (await send(wanted)) setKept((before) => before + 1);
  };
  const offered = bidOffer(bid, stop)?.cents;
  const stands = bid.own.proxy;
  return (
    <div ref={place} tabIndex={-1} class="place-proxy no-print">
      <AmountActs
        key={kept}
        label={stands === undefined ? 'Your proxy' : 'Another proxy'}
        start={offered}
        acts={[
          {
            words: (_, cents) => proxyWords(bid, cents),
            act: (cents) =>
              cents === null
                ? null
                : { do: 'bid', how: 'proxy', cents, was: stands?.cents ?? null, offered: cents === offered },
            main: bid.loud,
          },
        ]}
        onAct={act}
      />
      <Unkept pending={pending} onAct={act} onLeave={clear} />
    </div>
  );
}
