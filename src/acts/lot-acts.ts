import { leadsOf, putOffUntil } from '../domain/alerts/lot-calls.ts';
import type { Offer } from '../domain/alerts/offer.ts';
import type { Cents } from '../domain/money/cents.ts';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import type { Result } from '../domain/sale/result.ts';
import type { AlertRules } from '../domain/setup/alert-rules.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Happening } from '../journal/happening.ts';
import type { Change } from '../journal/make-entry.ts';
import { subjectOfLot } from '../journal/subject.ts';

/** What is done about a lot around its close, with one press each. */
export type LotAct =
  | Offer
  | { readonly do: 'take-back' }
  /** Minutes before the close, the earliest call first; null goes back to the rules. */
  | { readonly do: 'call-at'; readonly leadMinutes: readonly number[] | null }
  | { readonly do: 'placed'; readonly cents: Cents }
  | { readonly do: 'ended'; readonly result: Result };

export interface ActCircumstances {
  readonly now: Instant;
  readonly rules: Pick<AlertRules, 'leadMinutes' | 'placedLeadMinutes'>;
  /** What the max bid is at this moment; null when there is none. */
  readonly maxBid: Cents | null;
  /** Somebody should act on its bid before the close. */
  readonly loud: boolean;
}

/** An act as the change that keeps it. Refused with a sentence when it makes no sense for this lot now. */
export function changeForAct(lot: LotState, act: LotAct, circumstances: ActCircumstances): Outcome<Change> {
  const happening = happeningFor(lot, act, circumstances);
  return happening.ok ? ok({ subject: subjectOfLot(lot.id), happening: happening.value }) : happening;
}

function happeningFor(lot: LotState, act: LotAct, { now, rules, maxBid, loud }: ActCircumstances): Outcome<Happening> {
  const close = lot.facts.close?.instant;
  switch (act.do) {
    case 'placed':
      return ok({ kind: 'bid-noted', bid: { action: 'proxy-placed', cents: act.cents, at: now } });
    case 'lost':
      return ok(ended({ ended: 'lost' }, close, now, maxBid));
    case 'ended':
      return ok(ended(act.result, close, now, maxBid));
    case 'hand-over':
      return ok({ kind: 'handed-over', to: act.to });
    case 'take-back':
      return ok({ kind: 'handed-over', to: null });
    case 'call-at':
      return ok({ kind: 'lot-alerts-changed', leadMinutes: act.leadMinutes && [...act.leadMinutes] });
    default:
  }
  if (close === undefined) return refuse('no-close', 'This lot has no closing time, so it has no reminders to change.');
  switch (act.do) {
    case 'done':
      return ok({ kind: 'calls-done', close });
    case 'extended':
      return act.from === close
        ? ok({ kind: 'close-extended', from: close, minutes: act.minutes })
        : refuse('moved', 'The close of this lot has changed since. Check it before you add time.');
    case 'put-off': {
      const leads = leadsOf(
        { ownLeads: lot.clock?.leadMinutes, handedTo: lot.clock?.handedTo?.to, bid: { loud } },
        rules,
      );
      const until = putOffUntil({ close }, leads, act.minutes, now);
      return until === null
        ? refuse('too-late', 'It closes too soon to be reminded later.')
        : ok({ kind: 'calls-put-off', until: instant(until) });
    }
  }
}

/** The moment it ended is the close, unless that is still ahead. */
function ended(result: Result, close: Instant | undefined, now: Instant, maxBidCents: Cents | null): Happening {
  return { kind: 'result-noted', result, at: close !== undefined && close < now ? close : now, maxBidCents };
}
