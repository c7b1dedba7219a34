import type { ComponentChildren } from 'preact';
import type { Choice } from './choice-input.tsx';

export interface CheckListProps {
  readonly legend: string;
  readonly value: readonly string[];
  readonly choices: readonly Choice[];
  readonly onCommit: (value: string[]) => void;
  /** What stands there when nothing can be ticked. */
  readonly empty: ComponentChildren;
}

/** Any number of several. A value that is no longer among the choices is shown as such, so that it can be taken off. */
export function CheckList({ legend, value, choices, onCommit, empty }: CheckListProps) {
  const gone = value.filter((id) => choices.every((choice) => choice.value !== id));
  const all = [...choices, ...gone.map((id) => ({ value: id, label: `${id} (not in the setup)` }))];
  return (
    <fieldset class="check-list">
      <legend class="small">{legend}</legend>
      {all.length === 0
        ? empty
        : all.map((choice) => (
            <label key={choice.value} class="tick">
              <input
                type="checkbox"
                checked={value.includes(choice.value)}
                onChange={(event) =>
                  onCommit(
                    event.currentTarget.checked ? [...value, choice.value] : value.filter((id) => id !== choice.value),
                  )
                }
              />
              {choice.label}
            </label>
          ))}
    </fieldset>
  );
}
