import type { LotState } from '../folds/lot-state.ts';
import { subjectOfLot } from '../journal/subject.ts';
import type { LotAct, PlanAct } from './act.ts';
import { actWords } from './act-words.ts';
import { askFirst, type Circumstances, type Decision, refuseAct } from './circumstances.ts';
import { decideBid } from './decide-bid.ts';
import { clockHappening, closeQuestion } from './decide-clock.ts';
import { decideEnded } from './decide-ended.ts';

/**
 * What becomes of an act on a lot: the one rule for every screen, every notice and the popup. It is kept as entries, asked
 * about first, refused with a sentence, or known already. Pure: the same lot, act and circumstances give the same answer.
 */
export function decide(lot: LotState, act: LotAct, circumstances: Circumstances): Decision {
  switch (act.do) {
    case 'bid':
    case 'withdraw':
    case 'saw':
    case 'price':
    case 'accept-risk':
      return decideBid(lot, act, circumstances);
    case 'plan':
      return decidePlan(lot, act);
    case 'ended':
      return decideEnded(lot, act, circumstances);
    default: {
      const question = closeQuestion(lot, act, circumstances);
      if (question !== null) return askFirst(question);
      const happening = clockHappening(lot, act, circumstances);
      if (!happening.ok) return refuseAct(happening.message);
      const changes = [{ subject: subjectOfLot(lot.id), happening: happening.value }];
      return { as: 'write', changes, words: actWords(act) };
    }
  }
}

function decidePlan(lot: LotState, act: PlanAct): Decision {
  if ((lot.planChoice ?? null) === act.choice) return { as: 'nothing', message: 'That is how it is planned already.' };
  const happening = { kind: 'plan-choice', choice: act.choice } as const;
  return { as: 'write', changes: [{ subject: subjectOfLot(lot.id), happening }], words: actWords(act) };
}
