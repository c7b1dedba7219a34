import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { LotAct } from '../../acts/act.ts';
import { answered, type Choice, LONGEST, type Question } from '../../acts/question.ts';
import './ask.css';

interface AskBoxProps {
  readonly question: Question;
  readonly onAct: (act: LotAct) => void;
  /** Back to what was typed, or nothing at all: the answer changes nothing. */
  readonly onLeave: (leads: 'edit' | 'leave' | 'go') => void;
  /** Whether it takes the focus when it comes up. */
  readonly focus?: boolean;
}

/** A question with its answers as buttons; an answer that needs a word or an amount has a field before it. */
export function AskBox({ question, onAct, onLeave, focus = true }: AskBoxProps) {
  const id = useId();
  const first = useRef<HTMLDivElement>(null);
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string>();
  const fill = question.choices.find((choice) => choice.fill !== undefined)?.fill;
  useEffect(() => {
    setTyped('');
    setFault(undefined);
    if (focus) first.current?.querySelector<HTMLElement>('input, button')?.focus();
  }, [question, focus]);
  const choose = (choice: Choice) => {
    if (choice.leads !== 'do') return onLeave(choice.leads);
    const act = answered(choice, typed);
    if (act.ok) onAct(act.value);
    else setFault(act.message);
  };
  const withField = question.choices.find((choice) => choice.fill !== undefined);
  return (
    <fieldset class="ask-box" aria-live="polite">
      <legend class="strong">{question.words}</legend>
      <div ref={first} class="stack">
        {fill !== undefined && (
          <div class="field">
            <label class="label" for={id}>
              {fill.label}
              {fill.optional ? <span class="quiet"> (if you like)</span> : ''}
            </label>
            <input
              id={id}
              value={typed}
              maxLength={LONGEST[fill.what]}
              autoComplete="off"
              inputMode={fill.what === 'amount' ? 'decimal' : 'text'}
              aria-invalid={fault === undefined ? undefined : 'true'}
              aria-describedby={fault === undefined ? undefined : `${id}-fault`}
              onInput={(event) => {
                setTyped(event.currentTarget.value);
                setFault(undefined);
              }}
              onKeyDown={(event) => {
                if (event.key !== 'Enter' || withField === undefined) return;
                event.preventDefault();
                choose(withField);
              }}
            />
          </div>
        )}
        {fault !== undefined && (
          <span class="fault" id={`${id}-fault`} role="alert">
            {fault}
          </span>
        )}
        <div class="row">
          {question.choices.map((choice) => (
            <button key={choice.words} type="button" onClick={() => choose(choice)}>
              {choice.words}
            </button>
          ))}
        </div>
      </div>
    </fieldset>
  );
}
