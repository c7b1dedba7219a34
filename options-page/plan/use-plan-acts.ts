import { useState } from 'preact/hooks';
import type { LotAct } from '../../src/acts/act.ts';
import type { Question } from '../../src/acts/question.ts';
import { lotName } from '../../src/domain/lot/car-name.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useLotAct } from '../../src/ui/hooks/use-lot-act.ts';

/** What has to be answered before something is kept, or why it can't be. */
interface Asked {
  readonly lot: LotState;
  readonly question?: Question;
  readonly why?: string;
}

/** Sends what is said of a lot of the plan, one at a time, and holds what is asked about it. */
export function usePlanActs() {
  const send = useLotAct();
  const [asked, setAsked] = useState<Asked>();
  const act = async (lot: LotState, wanted: LotAct) => {
    const unkept = await send(lot, wanted).catch((error: unknown) => ({
      as: 'refuse' as const,
      message: String(error),
    }));
    if (unkept === null) setAsked(undefined);
    else setAsked({ lot, ...(unkept.as === 'ask' ? { question: unkept.question } : { why: unkept.message }) });
  };
  return {
    act: (lot: LotState, wanted: LotAct) => void act(lot, wanted),
    asked: asked && {
      ...asked,
      name: lotName(asked.lot.facts),
      answer: (wanted: LotAct) => void act(asked.lot, wanted),
      leave: () => setAsked(undefined),
    },
  };
}
