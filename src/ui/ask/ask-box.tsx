import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { LotAct } from '../../acts/act.ts';
import { answered, type Choice, LONGEST, type Question } from '../../acts/question.ts';
import './ask.css';

interface AskBoxProps {
  /** Another question is another box: its words are the key. */
  readonly question: Question;
  readonly onAct: (act: LotAct) => unknown;
  /** Back to what was typed, or nothing at all: the answer changes nothing. */
  readonly onLeave: (leads: 'edit' | 'leave' | 'go') => void;
  /** Whether it takes the focus when it comes up. */
  readonly focus?: boolean;
}

/**
 * A question with its answers as buttons. An answer that needs a word or an amount has a field before it: at once when it is
 * the likeliest, otherwise when it is chosen, so that plain Enter gives the likeliest answer.
 */
export function AskBox({ question, onAct, onLeave, focus = true }: AskBoxProps) {
  const id = useId();
  const first = useRef<HTMLDivElement>(null);
  const [typed, setTyped] = useState('');
  const [fault, setFault] = useState<string>();
  const [asked, setAsked] = useState(false);
  const sending = useRef(false);
  const withField = question.choices.find((choice) => choice.fill !== undefined);
  const isOpen = withField !== undefined && (withField === question.choices[0] || asked);
  const fill = isOpen ? withField.fill : undefined;
  useEffect(() => {
    if (focus || asked) first.current?.querySelector<HTMLElement>('input, button')?.focus();
  }, [focus, asked]);
  /** A second press while the first is being kept is no second answer. */
  const choose = async (choice: Choice) => {
    if (sending.current) return;
    if (choice.leads !== 'do') return onLeave(choice.leads);
    if (choice.fill !== undefined && !isOpen) return setAsked(true);
    const act = answered(choice, typed);
    if (!act.ok) return setFault(act.message);
    sending.current = true;
    try {
      await onAct(act.value);
    } finally {
      sending.current = false;
    }
  };
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
                void choose(withField);
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
            <button key={choice.words} type="button" onClick={() => void choose(choice)}>
              {choice.words}
            </button>
          ))}
        </div>
      </div>
    </fieldset>
  );
}
