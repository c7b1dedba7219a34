import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';

export interface SwitchedFieldProps<Value> {
  readonly label: string;
  /** `null` is off. */
  readonly value: Value | null;
  /** What it starts with when it was never on. */
  readonly atFirst: Value;
  readonly onCommit: (value: Value | null) => void;
  readonly children: (value: Value, set: (value: Value) => void) => ComponentChildren;
}

/** A rule that can be off; turned on again it is as it was. */
export function SwitchedField<Value>({ label, value, atFirst, onCommit, children }: SwitchedFieldProps<Value>) {
  const last = useRef(value ?? atFirst);
  if (value !== null) last.current = value;
  return (
    <div class="switched">
      <CheckInput label={label} value={value !== null} onCommit={(on) => onCommit(on ? last.current : null)} />
      {value !== null && children(value, onCommit)}
    </div>
  );
}
