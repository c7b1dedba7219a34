import { groupBy } from '../group-by.ts';
import type { LotFacts } from '../lot/lot.ts';
import { plainWords } from '../text/plain-words.ts';
import { carClassOf, sellerKind } from './kinds-of-lot.ts';
import { ENOUGH_CLOSINGS } from './market.ts';
import { groupKey, type MarketGroup } from './market-group.ts';

/** What tells one group of cars from another. */
export type GroupFacts = Pick<LotFacts, 'titleId' | 'venueId' | 'venueName' | 'make' | 'model' | 'seller' | 'sealed'>;

/** A lot that closed, and what it counts for: 1, less as it gets old. */
export interface Counted {
  readonly facts: GroupFacts;
  readonly weight: number;
}

/**
 * Which lots count as alike when closings are looked at: those of one title; of one venue where that has closings enough of its
 * own; and of one line of cars and one kind of seller where both they and what they leave behind have enough. So no lot is left
 * with too few closings by a finer cut, and each group starts from what all others teach.
 * @param closed every lot that closed and says something
 */
export function marketGroups(closed: readonly Counted[]): (facts: GroupFacts) => MarketGroup {
  const cuts = new Map<string, Cut | undefined>();
  for (const [key, list] of groupBy(closed, ({ facts }) => groupKey(coarse(facts)))) cuts.set(key, cut(list, CUTS));
  return (facts) => {
    const most = coarse(facts);
    return { ...most, ...partsOf(cuts.get(groupKey(most)), facts) };
  };
}

/** What is never taken for alike: other titles, and bids that are handed in unseen, since rivals bid less there than their limits. */
const coarse = ({ titleId, sealed }: GroupFacts): MarketGroup => ({
  carClass: '',
  title: titleId ?? '',
  seller: '',
  venue: sealed === undefined ? '' : SEALED,
});
const SEALED = 'sealed';

interface CutBy {
  readonly part: 'venue' | 'carClass' | 'seller';
  readonly partOf: (facts: GroupFacts) => string;
  /** How many closings must be left in what is not cut off. */
  readonly leaves: number;
}

function venueOf({ venueId, venueName, sealed }: GroupFacts): string {
  const venue = venueId ?? plainWords(venueName ?? '');
  return venue === '' || sealed === undefined ? venue : `${venue} ${SEALED}`;
}

const CUTS: readonly CutBy[] = [
  { part: 'venue', partOf: venueOf, leaves: 0 },
  { part: 'carClass', partOf: carClassOf, leaves: ENOUGH_CLOSINGS },
  { part: 'seller', partOf: ({ seller }) => sellerKind(seller), leaves: ENOUGH_CLOSINGS },
];

/** Closings cut by one thing, and each part by the next. */
interface Cut {
  readonly by: CutBy;
  readonly own: ReadonlyMap<string, Cut | undefined>;
  readonly rest: Cut | undefined;
}

function cut(list: readonly Counted[], [by, ...others]: readonly CutBy[]): Cut | undefined {
  if (by === undefined) return undefined;
  const { partOf, leaves } = by;
  const values = [...groupBy(list, ({ facts }) => partOf(facts))].filter(([value]) => value !== '');
  const largest = values.map(([value, part]) => ({ value, part, count: countOf(part) }));
  largest.sort((a, b) => b.count - a.count || (a.value < b.value ? -1 : 1));
  const own = new Map<string, Cut | undefined>();
  let left = countOf(list);
  for (const { value, part, count } of largest) {
    if (!isEnough(count) || (leaves > 0 && !isEnough(left - count))) continue;
    own.set(value, cut(part, others));
    left -= count;
  }
  const rest = list.filter(({ facts }) => !own.has(partOf(facts)));
  return { by, own, rest: cut(rest, others) };
}

const countOf = (list: readonly Counted[]): number => list.reduce((sum, { weight }) => sum + weight, 0);
const isEnough = (count: number): boolean => Math.round(count) >= ENOUGH_CLOSINGS;

function partsOf(from: Cut | undefined, facts: GroupFacts): Partial<MarketGroup> {
  if (from === undefined) return {};
  const { by, own, rest } = from;
  const value = by.partOf(facts);
  return own.has(value) ? { [by.part]: value, ...partsOf(own.get(value), facts) } : partsOf(rest, facts);
}
