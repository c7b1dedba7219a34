import { useState } from 'preact/hooks';
import type { LotAct } from '../../acts/act.ts';
import type { Question } from '../../acts/question.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { useLotAct } from '../hooks/use-lot-act.ts';

/** An act that was sent and is not kept: what is asked, or why it can't be. */
export interface Pending {
  readonly act: LotAct;
  readonly question?: Question;
  readonly why?: string;
}

export interface AskedAct {
  /** Sends an act. Resolves to whether it is settled; if not, `pending` has the question or the reason. */
  readonly send: (act: LotAct) => Promise<boolean>;
  readonly pending: Pending | undefined;
  readonly clear: () => void;
}

/**
 * Sends acts on one lot, and holds what has to be answered before one is kept.
 * @param start what is to be answered already, by an act that was sent elsewhere
 */
export function useAskedAct(lot: LotState, start?: Pending): AskedAct {
  const act = useLotAct();
  const [pending, setPending] = useState(start);
  return {
    pending,
    clear: () => setPending(undefined),
    async send(wanted) {
      const unkept = await act(lot, wanted).catch((error: unknown) => ({
        as: 'refuse' as const,
        message: error instanceof Error ? error.message : String(error),
      }));
      if (unkept === null) setPending(undefined);
      else if (unkept.as === 'ask') setPending({ act: wanted, question: unkept.question });
      else setPending({ act: wanted, why: unkept.message });
      return unkept === null;
    },
  };
}
