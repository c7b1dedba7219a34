import type { LotFacts } from '../lot/lot.ts';
import type { Instant } from '../time/instant.ts';

interface Life {
  readonly id: string;
  readonly facts: Pick<LotFacts, 'vin' | 'close'>;
  readonly addedAt: Instant;
}

/**
 * The lots with this lot's VIN whose sale came before its own, the latest first: the same car, sold again. The close decides,
 * and where one is not known the moment it came in. Lots of one close (the same lot kept twice) are no earlier lives.
 */
export function earlierLives<Lot extends Life>(lot: Life, sameVin: readonly Lot[]): Lot[] {
  if (lot.facts.vin === undefined || lot.facts.vin === '') return [];
  return sameVin
    .filter((other) => other.id !== lot.id && other.facts.vin === lot.facts.vin && momentOf(other) < momentOf(lot))
    .sort((a, b) => momentOf(b) - momentOf(a));
}

/** As {@link earlierLives}, for what came after: the soonest first. */
export function laterLives<Lot extends Life>(lot: Life, sameVin: readonly Lot[]): Lot[] {
  if (lot.facts.vin === undefined || lot.facts.vin === '') return [];
  return sameVin
    .filter((other) => other.id !== lot.id && other.facts.vin === lot.facts.vin && momentOf(other) > momentOf(lot))
    .sort((a, b) => momentOf(a) - momentOf(b));
}

function momentOf({ facts, addedAt }: Life): number {
  return facts.close?.instant ?? addedAt;
}
