import { type Noted, readNoted, writeNoted } from '../../journal/noted.ts';
import { ReadInput } from './read-input.tsx';

export interface NotedInputProps {
  readonly value: Noted | undefined;
  readonly onCommit: (noted: Noted | undefined) => void;
}

/** Fingerprints and keys that were noted somewhere else while it mattered: the one thing that a rewritten chain can't fit. */
export function NotedInput({ value, onCommit }: NotedInputProps) {
  return (
    <ReadInput<Noted>
      label="An earlier fingerprint, if you have one"
      value={value}
      write={writeNoted}
      read={readNoted}
      hint="From an email, paper or an older pack; a key counts too. Without it, a journal that was cut short or rewritten still passes"
      onCommit={onCommit}
    />
  );
}
