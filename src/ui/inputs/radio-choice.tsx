import { useId } from 'preact/hooks';
import type { Choice } from './choice-input.tsx';

export interface RadioChoiceProps<Value extends string> {
  readonly legend: string;
  readonly value: Value;
  readonly choices: readonly (Choice & { readonly value: Value })[];
  readonly onCommit: (value: Value) => void;
}

/** One of a few, all in view. */
export function RadioChoice<Value extends string>({ legend, value, choices, onCommit }: RadioChoiceProps<Value>) {
  const name = useId();
  return (
    <fieldset class="radio-choice">
      <legend class="small">{legend}</legend>
      <span class="row">
        {choices.map((choice) => (
          <label key={choice.value} class="tick">
            <input
              type="radio"
              name={name}
              value={choice.value}
              checked={choice.value === value}
              onChange={() => onCommit(choice.value)}
            />
            {choice.label}
          </label>
        ))}
      </span>
    </fieldset>
  );
}
