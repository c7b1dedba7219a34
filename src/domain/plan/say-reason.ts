import { type Cents, cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import type { PlanReason } from './plan.ts';

/** A reason in one sentence. */
export function sayReason(reason: PlanReason, planned: Cents | null): string {
  switch (reason.is) {
    case 'at-max':
      return 'The purse does not hold it back: bid up to the max bid.';
    case 'worth-more-later':
      return worthMoreLater(reason, planned);
    case 'purse-ends':
      return planned === null ? NO_ROOM[reason.short] : `${ENDS[reason.short]}, so the bid stops here.`;
    case 'closes-together':
      return planned === null
        ? `It closes with ${others(reason.lots)}, and their bids together already take the purse.`
        : `It closes with ${others(reason.lots)}, and the bids together must fit the purse.`;
    case 'held-for-pinned':
      return planned === null
        ? 'The money is held for other bids: proxies that are in, or lots you want.'
        : 'The rest of the money is held for other bids: proxies that are in, or lots you want.';
    case 'pinned':
      return 'You want this one: its money is held for it.';
    case 'proxy':
      return 'Your proxy is in: its money is held for it until the close.';
    case 'plan-ignored':
      return 'You chose to ignore the plan here: the max bid stands.';
    case 'skipped':
      return 'You chose not to bid on it.';
    case 'few-closings':
      return `${reason.closings === 0 ? 'No closings' : `Only ${count(reason.closings, 'closing')}`} of its group: too few to ration cash by (${reason.needed} are needed). The max bid stands.`;
    case 'no-max-bid':
      return 'It has no max bid.';
    case 'no-close':
      return 'It has no close, so it has no place in the plan. Enter when it closes.';
    case 'closed':
      return 'It has closed, so it takes no part. Note how it ended.';
    case 'after-purse':
      return 'It closes after this purse ends.';
    case 'price-passed':
      return 'The price has passed the max bid.';
    case 'cant-work-out':
      return reason.message;
  }
}

type Later = Extract<PlanReason, { is: 'worth-more-later' }>;

function worthMoreLater({ tied, worth, lotsToCome }: Later, planned: Cents | null): string {
  const where =
    lotsToCome === 0 ? 'kept' : `in the ${lotsToCome === 1 ? 'one lot' : `${lotsToCome} lots`} still to come`;
  const said = `the ${whole(tied)} it ties up is worth about ${whole(worth)} ${where}`;
  return planned === null ? `No bid: ${said}.` : `Not one step more: ${said}.`;
}

/** Whole dollars, and tens of them from $1,000 on: nobody knows it better. */
function whole(amount: Cents): string {
  const unit = Math.abs(amount) >= 100_000 ? 1_000 : 100;
  return formatMoney(cents(Math.round(amount / unit) * unit));
}

const count = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;
const others = (lots: number): string => (lots === 2 ? 'one other lot' : `${lots - 1} other lots`);

const ENDS = {
  cash: 'The cash reaches no further',
  line: 'The floor line reaches no further, nor does the cash',
  places: 'No space on the lot is left',
} as const;

const NO_ROOM = {
  cash: 'The cash does not reach for it.',
  line: 'Neither the floor line nor the cash reaches for it.',
  places: 'No space on the lot is left for it.',
} as const;
