import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Outcome } from '../domain/outcome.ts';
import { FieldFrame } from './field.tsx';

export interface ReadInputProps<Value> {
  readonly label: string;
  readonly value: Value | undefined;
  /** How a value is written into the box. */
  readonly write: (value: Value) => string;
  /** How what was typed becomes a value, or why it can't. */
  readonly read: (text: string) => Outcome<Value>;
  /** Called with the new value, or undefined when the box was emptied. Never called with something unreadable. */
  readonly onCommit: (value: Value | undefined) => void;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
  readonly before?: string;
  readonly after?: string;
  readonly numeric?: boolean;
  readonly wide?: boolean;
  readonly placeholder?: string;
}

/**
 * A box that is read when it is left or Enter is pressed. What can't be read stays in the box with the reason under it;
 * the value before it stays in force, and Escape brings it back.
 */
export function ReadInput<Value>(props: ReadInputProps<Value>) {
  const { label, value, write, read, onCommit, required, hint, before, after, numeric, wide, placeholder } = props;
  const written = value === undefined ? '' : write(value);
  const [text, setText] = useState(written);
  const [fault, setFault] = useState<string>();
  const lastWritten = useRef(written);

  useEffect(() => {
    if (lastWritten.current === written) return;
    lastWritten.current = written;
    setText(written);
    setFault(undefined);
  }, [written]);

  const commit = () => {
    const trimmed = text.trim();
    if (trimmed === written) {
      setFault(undefined);
      return;
    }
    if (trimmed === '') {
      if (required) {
        setFault('This is needed. Escape brings the old value back.');
        return;
      }
      setFault(undefined);
      onCommit(undefined);
      return;
    }
    const result = read(trimmed);
    if (!result.ok) {
      setFault(result.message);
      return;
    }
    setFault(undefined);
    setText(write(result.value));
    onCommit(result.value);
  };

  const boxClass = ['unit-box', before && 'has-before', after && 'has-after'].filter(Boolean).join(' ');
  return (
    <FieldFrame label={label} hint={hint} fault={fault} {...(wide ? { wide } : {})}>
      {({ id, describedBy, invalid }) => (
        <span class={boxClass}>
          {before && (
            <span class="unit" aria-hidden="true">
              {before}
            </span>
          )}
          <input
            id={id}
            class={numeric ? 'number' : undefined}
            inputMode={numeric ? 'decimal' : undefined}
            autoComplete="off"
            spellcheck={false}
            value={text}
            placeholder={placeholder}
            aria-describedby={describedBy}
            aria-invalid={invalid ? 'true' : undefined}
            onInput={(event) => setText(event.currentTarget.value)}
            onBlur={commit}
            onKeyDown={(event) => {
              if (event.key === 'Enter') commit();
              if (event.key === 'Escape' && text !== written) {
                event.stopPropagation();
                setText(written);
                setFault(undefined);
              }
            }}
          />
          {after && (
            <span class="unit after" aria-hidden="true">
              {after}
            </span>
          )}
        </span>
      )}
    </FieldFrame>
  );
}
