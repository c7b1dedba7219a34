import type { TargetedKeyboardEvent } from 'preact';
import { useState } from 'preact/hooks';
import type { Outcome } from '../../domain/outcome.ts';
import { useBoxText } from './use-box-text.ts';

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
  const [fault, setFault] = useState<string>();
  const { text, inBox, setText } = useBoxText(written, () => setFault(undefined));

  const commit = (halfFilled = false) => {
    if (halfFilled) return setFault('Fill it in completely, or clear it. Escape restores the old value.');
    const trimmed = inBox.current.trim();
    const result = trimmed === '' || trimmed === written ? null : read(trimmed);
    if (result !== null && !result.ok) return setFault(result.message);
    if (trimmed === '' && written !== '' && required) {
      return setFault('This is required. Escape restores the old value.');
    }
    setFault(undefined);
    if (trimmed === written) return;
    if (result === null) return onCommit(undefined);
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
      if (event.key === 'Escape' && (inBox.current !== written || fault !== undefined)) {
        event.stopPropagation();
        // Half a date has no text of its own, so putting the old text back would not redraw the box.
        event.currentTarget.value = written;
        setText(written);
        setFault(undefined);
      }
    },
  };
}
