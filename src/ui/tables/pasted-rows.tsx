import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface PastedRowsProps {
  readonly label: string;
  readonly hint: string;
  readonly example: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  /** What stands between the box and what was read. */
  readonly between?: ComponentChildren;
  readonly faults: readonly { readonly line: number; readonly message: string }[];
  /** What was read, said aloud as it changes. */
  readonly children: ComponentChildren;
  /** What the button says that takes it. */
  readonly take: string;
  readonly usable: boolean;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

const [LEAST_LINES, MOST_LINES] = [5, 14];
const FAULTS_SHOWN = 20;

/** A box for rows as they were copied, the rows that can't be read, and two buttons; nothing is taken before it is asked. */
export function PastedRows(props: PastedRowsProps) {
  const { label, hint, example, text, faults } = props;
  const id = useId();
  return (
    <>
      <div class="field">
        <label class="label" for={id}>
          {label}
        </label>
        <textarea
          id={id}
          rows={Math.min(MOST_LINES, Math.max(LEAST_LINES, text.split('\n').length + 1))}
          value={text}
          placeholder={example}
          spellcheck={false}
          aria-describedby={`${id}-hint`}
          onInput={(event) => props.onText(event.currentTarget.value)}
        />
        <span class="quiet small" id={`${id}-hint`}>
          {hint}
        </span>
      </div>
      {props.between}
      <div aria-live="polite" class="stack">
        {faults.length > 0 && (
          <ul class="note warning plain-list">
            {faults.slice(0, FAULTS_SHOWN).map((fault) => (
              <li key={fault.line}>
                <strong>Row {fault.line} is not used.</strong> {fault.message}
              </li>
            ))}
            {faults.length > FAULTS_SHOWN && <li>And {faults.length - FAULTS_SHOWN} more rows.</li>}
          </ul>
        )}
        {props.children}
      </div>
      <p class="row">
        <button type="button" class="main" disabled={!props.usable} onClick={props.onTake}>
          {props.take}
        </button>
        <button type="button" onClick={props.onLeave}>
          Cancel
        </button>
      </p>
    </>
  );
}
