import type { TargetedKeyboardEvent } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Outcome } from '../domain/outcome.ts';

export interface ReadBoxOptions<Value> {
  readonly value: Value | undefined;
  readonly write: (value: Value) => string;
  readonly read: (text: string) => Outcome<Value>;
  /** Called with the new value, or undefined when the box was emptied. Never called with something unreadable. */
  readonly onCommit: (value: Value | undefined) => void;
  readonly required?: boolean | undefined;
}

export interface ReadBox {
  readonly text: string;
  readonly fault: string | undefined;
  readonly type: (text: string) => void;
  /** Reads what is in the box; the browser's own date and time boxes say when they hold half of one. */
  readonly commit: (halfFilled?: boolean) => void;
  readonly onKeyDown: (event: TargetedKeyboardEvent<HTMLInputElement>) => void;
}

/**
 * The memory of a box that is read when it is left or Enter is pressed: what can't be read stays with the reason, the
 * value before it stays in force, and Escape brings it back.
 */
export function useReadBox<Value>({ value, write, read, onCommit, required }: ReadBoxOptions<Value>): ReadBox {
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

  const commit = (halfFilled = false) => {
    if (halfFilled) return setFault('Fill in all of it, or empty it. Escape brings the old value back.');
    const trimmed = text.trim();
    if (trimmed === written) return setFault(undefined);
    if (trimmed === '') {
      if (required) return setFault('This is needed. Escape brings the old value back.');
      setFault(undefined);
      return onCommit(undefined);
    }
    const result = read(trimmed);
    if (!result.ok) return setFault(result.message);
    setFault(undefined);
    setText(write(result.value));
    return onCommit(result.value);
  };

  return {
    text,
    fault,
    type: setText,
    commit,
    onKeyDown: (event) => {
      if (event.key === 'Enter') commit(event.currentTarget.validity.badInput);
      if (event.key === 'Escape' && (text !== written || fault !== undefined)) {
        event.stopPropagation();
        // Half a date has no text of its own, so putting the old text back would not redraw the box.
        event.currentTarget.value = written;
        setText(written);
        setFault(undefined);
      }
    },
  };
}
