import type { LotAct } from '../../acts/act.ts';
import { actWords } from '../../acts/act-words.ts';
import { AskBox } from './ask-box.tsx';
import type { Pending } from './use-asked-act.ts';

interface UnkeptProps {
  readonly pending: Pending | undefined;
  readonly onAct: (act: LotAct) => unknown;
  readonly onLeave: (leads: 'edit' | 'leave' | 'go') => void;
}

/** An act that is not kept: the question that it raised, or why it can't be; it stays until it is settled. */
export function Unkept({ pending, onAct, onLeave }: UnkeptProps) {
  if (pending === undefined) return null;
  const { act, question, why } = pending;
  if (question !== undefined)
    return <AskBox key={question.words} question={question} onAct={onAct} onLeave={onLeave} />;
  return (
    <div class="note warning small" role="alert">
      <p>
        <span class="strong">Not saved: {actWords(act)}.</span> {why}
      </p>
      <div class="row">
        <button type="button" onClick={() => onAct(act)}>
          Save it again
        </button>
        <button type="button" class="plain" onClick={() => onLeave('leave')}>
          Cancel
        </button>
      </div>
    </div>
  );
}
