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
      label="An earlier fingerprint, if you have one"
      value={value}
      write={writeHead}
      read={readNotedHead}
      hint="From an email, paper or an older pack. Without it, a journal that was cut short or rewritten still passes"
      onCommit={onCommit}
    />
  );
}
