import type { BidNews } from '../../domain/alerts/alert-lot.ts';
import type { OpenBid } from '../../domain/bid/bid-state.ts';
import { bidWords } from '../../domain/bid/bid-words.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { LotState } from '../../folds/lot-state.ts';

/**
 * What is to be said of a bid that is in: that a price has passed it and it can still be raised, or that it stands above the
 * max bid; and once, calmly, that the price is past the max bid and nothing is to be done. Said once for each bid, and once
 * more when the max bid moves.
 */
export function newsOfBid({ id, changedAt }: Pick<LotState, 'id' | 'changedAt'>, state: OpenBid): BidNews | null {
  const words = bidWords(state);
  const title = words.charAt(0).toLowerCase() + words.slice(1);
  const since = state.price?.since ?? changedAt;
  if (!state.loud && (state.is === 'outbid' || state.is === 'none'))
    return state.room.is === 'over' || state.room.is === 'at' || state.room.is === 'next-over'
      ? { key: `${id} past ${state.is === 'outbid' ? state.bid.cents : 0}`, since, title, body: CALM, calm: true }
      : null;
  if (!state.loud || (state.is !== 'outbid' && state.is !== 'over-max')) return null;
  const { bid } = state;
  if (state.is === 'outbid')
    return {
      key: `${id} outbid ${bid.cents} ${bid.at}`,
      since,
      title,
      body: state.room.is === 'left' ? 'There is room left: raise it or stop.' : 'Check it.',
    };
  const { maxBid } = state;
  return {
    key: `${id} over ${state.than === 'plan' ? 'plan ' : ''}${bid.cents} ${maxBid ?? 0}`,
    since: changedAt,
    title,
    urgent: true,
    body: `${maxBid === null ? 'Withdraw it' : `Cut it to ${formatMoney(maxBid)}`} or ${state.than === 'plan' ? 'ignore the plan for it' : 'accept the risk'}.`,
  };
}

const CALM = 'Nothing is to be done.';
