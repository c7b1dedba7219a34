import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { Outcome } from '../../domain/outcome.ts';
import { FieldFrame } from './field.tsx';

export interface QuickLineProps<Value> {
  readonly label: string;
  readonly read: (text: string) => Outcome<Value>;
  /** Keeps what was read. The line is emptied when it answers null; a sentence stays under it, and so does what was typed. */
  readonly onKeep: (value: Value, again: boolean) => Promise<string | null>;
  readonly button: string;
  readonly hint?: ComponentChildren;
  readonly placeholder?: string;
}

/**
 * One line that is read and kept with Enter or its button. `again` is true when the very same text is sent a second time
 * after a sentence: that is how a doubt is answered.
 */
export function QuickLine<Value>({ label, read, onKeep, button, hint, placeholder }: QuickLineProps<Value>) {
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string>();
  const refused = useRef<string | null>(null);
  const send = async () => {
    const value = read(text);
    if (!value.ok) return setFault(value.message);
    const sentence = await onKeep(value.value, refused.current === text);
    refused.current = sentence === null ? null : text;
    setFault(sentence ?? undefined);
    if (sentence === null) setText('');
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        send().catch((error: unknown) => setFault(String(error)));
      }}
    >
      <FieldFrame label={label} hint={hint} fault={fault}>
        {({ id, describedBy, invalid }) => (
          <span class="row quick-line">
            <input
              id={id}
              autoComplete="off"
              spellcheck={false}
              value={text}
              placeholder={placeholder}
              aria-describedby={describedBy}
              aria-invalid={invalid ? 'true' : undefined}
              onInput={(event) => {
                setText(event.currentTarget.value);
                setFault(undefined);
              }}
            />
            <button type="submit">{button}</button>
          </span>
        )}
      </FieldFrame>
    </form>
  );
}
