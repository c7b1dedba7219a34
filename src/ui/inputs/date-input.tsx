import type { ComponentChildren } from 'preact';
import { ok, refuse } from '../../domain/outcome.ts';
import { type LocalDate, localDateSchema } from '../../domain/time/local-date.ts';
import { NativeBox } from './native-box.tsx';

export interface DateInputProps {
  readonly label: string;
  readonly value: LocalDate | undefined;
  readonly onCommit: (value: LocalDate | undefined) => void;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
}

/** A calendar date. */
export function DateInput(props: DateInputProps) {
  return <NativeBox<LocalDate> {...props} type="date" read={readDate} />;
}

function readDate(text: string) {
  const date = localDateSchema.safeParse(text);
  return date.success ? ok(date.data) : refuse('not-a-date', 'This is not a date. Choose one such as 2026-03-01.');
}
