import type { ComponentChildren } from 'preact';
import { ok, refuse } from '../../domain/outcome.ts';
import { type LocalTime, localTimeSchema } from '../../domain/time/local-date.ts';
import { NativeBox } from './native-box.tsx';

export interface TimeOfDayInputProps {
  readonly label: string;
  readonly value: LocalTime | undefined;
  readonly onCommit: (value: LocalTime | undefined) => void;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
}

/** A time of day on a wall clock, in the user's own way of writing it. */
export function TimeOfDayInput(props: TimeOfDayInputProps) {
  return <NativeBox<LocalTime> {...props} type="time" read={readTime} />;
}

function readTime(text: string) {
  const time = localTimeSchema.safeParse(text);
  return time.success ? ok(time.data) : refuse('not-a-time', 'This is not a time of day. Choose one such as 9:30.');
}
