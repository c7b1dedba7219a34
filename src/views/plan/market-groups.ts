import type { LotFacts } from '../../domain/lot/lot.ts';
import { ENOUGH_CLOSINGS } from '../../domain/market/market.ts';
import type { MarketGroup } from '../../domain/market/market-group.ts';
import { plainWords } from '../../domain/text/plain-words.ts';

/** What tells one group of cars from another, the first thing that there is enough of last. */
type Facts = Pick<LotFacts, 'titleId' | 'venueId' | 'venueName'>;

/**
 * Which lots count as alike when closings are looked at: those of one title, and of one venue where that has closings enough
 * of its own. A finer cut would leave a dealer of a few hundred closings with nothing but groups too small to say anything.
 * @param closed the facts of every lot that closed and says something
 */
export function marketGroups(closed: readonly Facts[]): (facts: Facts) => MarketGroup {
  const counts = new Map<string, number>();
  for (const facts of closed) counts.set(cutOf(facts), (counts.get(cutOf(facts)) ?? 0) + 1);
  return (facts) => ({
    carClass: '',
    title: facts.titleId ?? '',
    seller: '',
    venue: (counts.get(cutOf(facts)) ?? 0) >= ENOUGH_CLOSINGS ? venueOf(facts) : '',
  });
}

const venueOf = ({ venueId, venueName }: Facts): string => venueId ?? plainWords(venueName ?? '');

const cutOf = (facts: Facts): string => `${facts.titleId ?? ''}\n${venueOf(facts)}`;
