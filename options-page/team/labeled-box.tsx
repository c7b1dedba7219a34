import { FieldFrame } from '../../src/ui/inputs/field.tsx';

interface LabeledBoxProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly hint?: string;
  /** For a text that was copied from elsewhere. */
  readonly long?: true;
}

/** A box that is read when the form is sent. */
export function LabeledBox({ label, value, onValue, hint, long }: LabeledBoxProps) {
  return (
    <FieldFrame label={label} hint={hint} wide>
      {({ id, describedBy }) =>
        long ? (
          <textarea
            id={id}
            rows={4}
            value={value}
            autoComplete="off"
            spellcheck={false}
            aria-describedby={describedBy}
            onInput={(event) => onValue(event.currentTarget.value)}
          />
        ) : (
          <input
            id={id}
            value={value}
            maxLength={80}
            autoComplete="off"
            aria-describedby={describedBy}
            onInput={(event) => onValue(event.currentTarget.value)}
          />
        )
      }
    </FieldFrame>
  );
}
