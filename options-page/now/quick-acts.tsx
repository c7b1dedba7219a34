import type { LotAct } from '../../src/acts/act.ts';
import { wantsAct } from '../../src/domain/alerts/alert-lot.ts';
import { offerWords } from '../../src/domain/alerts/offer.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { bidOffer, otherOffers } from '../../src/views/lots/act-offers.ts';
import type { NowLot } from './now-lot.ts';
import { type QuickAct, quickResults } from './result-acts.ts';

interface QuickActsProps {
  readonly lot: NowLot;
  /** Who uses this computer, where several are in a team. */
  readonly me?: string | undefined;
  readonly now: Instant;
  readonly onAct: (act: LotAct) => void;
}

/** What is most likely said of a lot now, each with one tap and nothing to type. Nothing where nothing is due. */
export function QuickActs({ lot, me, now, onAct }: QuickActsProps) {
  const acts = [...haveIt(lot, me, now), ...quickActs(lot, now)];
  if (acts.length === 0) return null;
  return (
    <div class="now-quick">
      {acts.map(({ words, act }, index) => (
        <button key={words} type="button" class={index === 0 ? 'main' : ''} onClick={() => onAct(act)}>
          {words}
          <span class="visually-hidden">, {lot.name}</span>
        </button>
      ))}
    </div>
  );
}

/** In a team, first of all, while somebody should act and nobody said that he does: the others wait for it. */
function haveIt(lot: NowLot, me: string | undefined, now: Instant): readonly QuickAct[] {
  if (me === undefined || lot.mine === true || lot.taken === true || !wantsAct(lot)) return [];
  if (lot.bidAt(now).is === 'ended') return [];
  return [{ words: 'I have it', act: { do: 'have-it', as: me } }];
}

function quickActs(lot: NowLot, now: Instant): readonly QuickAct[] {
  const bid = lot.bidAt(now);
  if (bid.is === 'ended') return quickResults(lot, now);
  const offer = bidOffer(bid, lot.stopAt);
  const others = otherOffers(bid);
  if (offer === null) return others;
  const act: LotAct = { do: 'bid', how: 'proxy', cents: offer.cents, offered: true };
  return [{ words: offerWords(offer), act }, ...others];
}
