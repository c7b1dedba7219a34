import { type ChainHead, readNotedHead, writeHead } from '../../journal/chain-head.ts';
import { ReadInput } from './read-input.tsx';

export interface NotedHeadInputProps {
  readonly value: ChainHead | undefined;
  readonly onCommit: (head: ChainHead | undefined) => void;
}

/** A fingerprint that was noted somewhere else while it mattered: the one thing that a rewritten chain can't fit. */
export function NotedHeadInput({ value, onCommit }: NotedHeadInputProps) {
  return (
    <ReadInput<ChainHead>
      label="A fingerprint noted earlier, if there is one"
      value={value}
      write={writeHead}
      read={readNotedHead}
      hint="From a mail, paper or an older pack. Without it a chain that was cut off at its end or written anew as a whole looks whole"
      onCommit={onCommit}
    />
  );
}
