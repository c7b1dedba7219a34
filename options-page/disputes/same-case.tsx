import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayWhen } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { sameCases } from '../../src/views/after-sale/same-cases.ts';

interface SameCaseProps {
  readonly lot: LotState;
  readonly dispute: Parameters<typeof sameCases>[1];
  readonly now: Instant;
}

/** Points at other disputes about one lot for one reason: often it is one case that was opened twice. */
export function SameCase({ lot, dispute, now }: SameCaseProps) {
  const others = sameCases(lot, dispute);
  if (others.length === 0) return null;
  return (
    <div class="note warning">
      {others.map(({ entry, at, outcome }) => (
        <p key={entry}>
          This car has another dispute for the same reason ({REASON_WORDS[dispute.reason].toLowerCase()}), opened{' '}
          {sayWhen(at, now)}
          {outcome === undefined ? '' : ' and ended'}. <a href={`#/dispute/${entry}`}>Look at it</a>: if it is the same
          case, keep one of them.
        </p>
      ))}
    </div>
  );
}
