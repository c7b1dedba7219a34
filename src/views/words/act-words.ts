import type { LotAct } from '../../acts/lot-acts.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { sayResult } from '../../domain/sale/result-words.ts';

/** What was done about a lot, in the words in which it is said back. */
export function actWords(act: LotAct): string {
  switch (act.do) {
    case 'placed':
      return `proxy of ${formatMoney(act.cents)} placed.`;
    case 'ended':
      return `${sayResult(act.result)}.`;
    case 'lost':
      return 'lost.';
    case 'put-off':
      return `next reminder in ${act.minutes} min.`;
    case 'extended':
      return `extended by ${act.minutes} min.`;
    case 'hand-over':
      return `handed over to ${act.to}.`;
    case 'take-back':
      return 'yours again.';
    case 'call-at':
      return callAtWords(act.leadMinutes);
    case 'done':
      return 'no more reminders for this close.';
  }
}

function callAtWords(leads: readonly number[] | null): string {
  if (leads === null) return 'reminders as in Setup.';
  return leads.length === 0
    ? 'no reminders before this close.'
    : `reminders ${leads.join(', ')} min before this close.`;
}
