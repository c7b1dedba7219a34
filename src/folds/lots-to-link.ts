import { lotTitle } from '../domain/lot/car-name.ts';
import type { LotFacts } from '../domain/lot/lot.ts';
import type { LotState } from './lot-state.ts';

/** Lots that may be the car offered again. Without words only those with its VIN, and where it has none those named like it. */
export function lotsToLink(lots: readonly LotState[], lot: LotState, search: string): LotState[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const { vin, make, model } = lot.facts;
  const isSame = ({ facts }: LotState) =>
    vin === undefined || vin === '' ? facts.make === make && facts.model === model : facts.vin === vin;
  const soldAt = lot.sale?.result?.at ?? lot.facts.close?.instant ?? 0;
  return lots
    .filter((one) => one.id !== lot.id && (one.facts.close?.instant ?? one.addedAt) > soldAt)
    .filter((one) => (words.length === 0 ? isSame(one) : words.every((word) => textOf(one.facts).includes(word))))
    .sort((a, b) => Number(isSame(b)) - Number(isSame(a)));
}

const textOf = (facts: LotFacts): string =>
  [lotTitle(facts), facts.vin, facts.lotNumber, facts.venueName].join(' ').toLowerCase();
