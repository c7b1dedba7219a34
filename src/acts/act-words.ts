import { formatMoney } from '../domain/money/format-money.ts';
import { ACTION_WORDS, sayResult } from '../domain/sale/result-words.ts';
import type { LotAct } from './act.ts';

/** What is done about a lot, in the words in which it is said back. Without a full stop. */
export function actWords(act: LotAct): string {
  switch (act.do) {
    case 'bid':
      return `${act.how === 'live' ? 'live bid' : 'proxy'} of ${formatMoney(act.cents)}`;
    case 'withdraw':
      return 'proxy withdrawn';
    case 'saw':
      return ACTION_WORDS[act.what].toLowerCase();
    case 'price':
      return `price now ${formatMoney(act.cents)}`;
    case 'accept-risk':
      return 'risk accepted';
    case 'plan':
      return act.choice === null ? 'planned like the others again' : PLAN_WORDS[act.choice];
    case 'ended':
      return sayResult(act.result);
    case 'put-off':
      return `next reminder in ${act.minutes} min`;
    case 'extended':
      return `extended by ${act.minutes} min`;
    case 'hand-over':
      return `handed over to ${act.to}`;
    case 'have-it':
      return `${act.as} has it`;
    case 'take-back':
      return 'yours again';
    case 'call-at':
      return callAtWords(act.leadMinutes);
    case 'done':
      return 'no more reminders for this close';
    case 'pick-close':
      return 'close settled';
    case 'set-close':
      return act.close === undefined ? 'close removed' : 'close saved';
  }
}

const PLAN_WORDS = {
  pinned: 'pinned in the plan',
  skipped: 'skipped in the plan',
  'plan-ignored': 'plan ignored for this lot',
} as const;

function callAtWords(leads: readonly number[] | null): string {
  if (leads === null) return 'reminders as in Setup';
  return leads.length === 0 ? 'no reminders before this close' : `reminders ${leads.join(', ')} min before this close`;
}
