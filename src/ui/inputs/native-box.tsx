import type { ComponentChildren } from 'preact';
import type { Outcome } from '../../domain/outcome.ts';
import { FieldFrame } from './field.tsx';
import { useReadBox } from './use-read-box.ts';

export interface NativeBoxProps<Value extends string> {
  readonly type: 'date' | 'time';
  readonly label: string;
  readonly value: Value | undefined;
  readonly read: (text: string) => Outcome<Value>;
  readonly onCommit: (value: Value | undefined) => void;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
}

/** The browser's own box for a date or a time of day, read when it is left. */
export function NativeBox<Value extends string>({ type, label, hint, ...options }: NativeBoxProps<Value>) {
  const box = useReadBox<Value>({ ...options, write: (value) => value });
  return (
    <FieldFrame label={label} hint={hint} fault={box.fault}>
      {({ id, describedBy, invalid }) => (
        <input
          id={id}
          type={type}
          value={box.text}
          aria-describedby={describedBy}
          aria-invalid={invalid ? 'true' : undefined}
          onInput={(event) => box.type(event.currentTarget.value)}
          onBlur={(event) => box.commit(event.currentTarget.validity.badInput)}
          onKeyDown={box.onKeyDown}
        />
      )}
    </FieldFrame>
  );
}
