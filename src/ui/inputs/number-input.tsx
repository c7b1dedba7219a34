import type { ComponentChildren } from 'preact';
import { ok, refuse } from '../../domain/outcome.ts';
import { ReadInput } from './read-input.tsx';

export interface NumberInputProps {
  readonly label: string;
  readonly value: number | undefined;
  readonly onCommit: (value: number | undefined) => void;
  readonly least: number;
  readonly most: number;
  /** The unit, said after the box. */
  readonly unit?: string;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
  /** Years are written without a thousands separator. */
  readonly grouped?: boolean;
}

/** A whole number between two limits, both allowed. */
export function NumberInput({ least, most, unit, grouped = true, ...frame }: NumberInputProps) {
  const write = (value: number) => (grouped ? value.toLocaleString('en-US') : String(value));
  return (
    <ReadInput<number>
      {...frame}
      write={write}
      read={(text) => {
        const digits = text.replace(/[,\s]/g, '');
        if (!/^\d+$/.test(digits)) return refuse('not-a-number', 'Write a whole number.');
        const value = Number(digits);
        if (value < least || value > most) return refuse('out-of-range', `Between ${write(least)} and ${write(most)}.`);
        return ok(value);
      }}
      numeric
      {...(unit === undefined ? {} : { after: unit })}
    />
  );
}
