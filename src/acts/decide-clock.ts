import { leadsOf, putOffUntil } from '../domain/alerts/lot-calls.ts';
import { type Outcome, ok, refuse } from '../domain/outcome.ts';
import { type CloseTime, lastReading, nextReading, pickCloseTime } from '../domain/time/close-time.ts';
import { instant } from '../domain/time/instant.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Happening } from '../journal/happening.ts';
import type { ClockAct } from './act.ts';
import { type Circumstances, when } from './circumstances.ts';
import type { Question } from './question.ts';

/** An act about the reminders of a lot as what is kept of it. Refused with a sentence when it makes no sense now. */
export function clockHappening(lot: LotState, act: ClockAct, { now, setup, work }: Circumstances): Outcome<Happening> {
  const { close } = lot.facts;
  switch (act.do) {
    case 'hand-over':
      return ok({ kind: 'handed-over', to: act.to });
    case 'have-it':
      return ok({ kind: 'handed-over', to: act.as, taken: true });
    case 'take-back':
      return ok({ kind: 'handed-over', to: null });
    case 'call-at':
      return ok({ kind: 'lot-alerts-changed', leadMinutes: act.leadMinutes && [...act.leadMinutes] });
    case 'set-close':
      return ok(closeSet(act.close));
    default:
  }
  if (close === undefined) return refuse('no-close', 'This lot has no closing time, so it has no reminders to change.');
  switch (act.do) {
    case 'done':
      return ok({ kind: 'calls-done', close: close.instant });
    case 'extended':
      return act.from === close.instant
        ? ok({ kind: 'close-extended', from: close.instant, minutes: act.minutes })
        : refuse('moved', 'The close of this lot has changed since. Check it before you add time.');
    case 'pick-close':
      return ok(closeSet(pickCloseTime(close, act.at)));
    case 'put-off': {
      const { loud } = work(lot).bid;
      const { leadMinutes: ownLeads, handedTo } = lot.clock ?? {};
      const leads = leadsOf({ ownLeads, handedTo: handedTo?.to, bid: { loud } }, setup.alerts);
      const until = putOffUntil({ close: nextReading(close, now) }, leads, act.minutes, now);
      return until === null
        ? refuse('too-late', 'It closes too soon to be reminded later.')
        : ok({ kind: 'calls-put-off', until: instant(until) });
    }
  }
}

function closeSet(close: CloseTime | undefined): Happening {
  if (close === undefined) return { kind: 'lot-changed', set: {}, clear: ['close'], evidence: {} };
  const evidence = { close: { from: 'typed' as const, text: '', sure: 'certain' as const } };
  return { kind: 'lot-changed', set: { close }, clear: [], evidence };
}

/** A close that is moved to a time that has passed ends the bidding, which may be a slip. */
export function closeQuestion({ facts, sale }: LotState, act: ClockAct, circumstances: Circumstances): Question | null {
  if (act.do !== 'set-close' || act.close === undefined || sale?.result !== undefined) return null;
  const { now } = circumstances;
  const wasAhead = facts.close === undefined || lastReading(facts.close) > now;
  if (!wasAhead || lastReading(act.close) > now || act.sure?.includes('passed') === true) return null;
  return {
    code: 'passed',
    words: `${when(act.close.instant, circumstances)} has passed. Has it closed?`,
    choices: [
      { words: 'Yes', leads: 'do', act: { ...act, sure: ['passed'] } },
      { words: 'No, change the time', leads: 'edit' },
    ],
  };
}
