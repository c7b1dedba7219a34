import type { ComponentChildren } from 'preact';
import { FieldFrame } from './field.tsx';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceInputProps {
  readonly label: string;
  readonly value: string | undefined;
  readonly choices: readonly Choice[];
  /** The wording of "none of them"; without it one must be chosen. */
  readonly none?: string;
  readonly onCommit: (value: string | undefined) => void;
  readonly hint?: ComponentChildren;
  readonly wide?: boolean;
}

/** One of several. A value that is no longer among the choices is shown as such, not dropped. */
export function ChoiceInput({ label, value, choices, none, onCommit, hint, wide }: ChoiceInputProps) {
  const known = value === undefined || choices.some((choice) => choice.value === value);
  return (
    <FieldFrame label={label} hint={hint} {...(wide ? { wide } : {})}>
      {({ id, describedBy }) => (
        <select
          id={id}
          aria-describedby={describedBy}
          value={value ?? ''}
          onChange={(event) => onCommit(event.currentTarget.value === '' ? undefined : event.currentTarget.value)}
        >
          {none !== undefined && <option value="">{none}</option>}
          {!known && <option value={value}>{value} (not in the setup)</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      )}
    </FieldFrame>
  );
}
