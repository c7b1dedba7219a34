import { FieldFrame } from '../../src/ui/inputs/field.tsx';

export interface WordsInputProps {
  readonly label: string;
  readonly value: string;
  readonly longest: number;
  readonly onChange: (value: string) => void;
  readonly rows?: number;
}

/** Some lines of text, kept by the form around it. */
export function WordsInput({ label, value, longest, onChange, rows = 4 }: WordsInputProps) {
  return (
    <FieldFrame label={label} wide>
      {({ id }) => (
        <textarea
          id={id}
          rows={rows}
          maxLength={longest}
          value={value}
          onInput={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </FieldFrame>
  );
}
