import type { ComponentChildren } from 'preact';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import { ReadInput } from './read-input.tsx';

export interface TextInputProps {
  readonly label: string;
  readonly value: string | undefined;
  readonly onCommit: (value: string | undefined) => void;
  readonly longest?: number;
  readonly required?: boolean;
  readonly hint?: ComponentChildren;
  readonly wide?: boolean;
  readonly placeholder?: string;
  /** How the text is tidied or refused before it is kept; by default it is kept as it is. */
  readonly read?: (text: string) => Outcome<string>;
}

/** One line of text. */
export function TextInput({ longest = 200, read = ok, ...frame }: TextInputProps) {
  return (
    <ReadInput<string>
      {...frame}
      write={(value) => value}
      read={(text) =>
        text.length > longest
          ? refuse('too-long', `At most ${longest} characters; this has ${text.length}.`)
          : read(text)
      }
    />
  );
}
