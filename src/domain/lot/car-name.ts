import type { LotFacts } from './lot.ts';

/** "2021 Larkspur Hauler 250 Crew" out of whatever is known; empty when nothing is. */
export function carName(facts: Pick<LotFacts, 'year' | 'make' | 'model' | 'trim'>): string {
  return [facts.year, facts.make, facts.model, facts.trim]
    .filter((part) => part !== undefined && part !== '')
    .join(' ');
}

/** The title with the number that the sale gives it. */
export function lotName(facts: LotFacts): string {
  const title = lotTitle(facts);
  const { lotNumber } = facts;
  return lotNumber === undefined || title === `Lot ${lotNumber}` ? title : `${title}, lot ${lotNumber}`;
}

/** The name if there is one, else the VIN, else the lot number, else a word that says it has none yet. */
export function lotTitle(facts: LotFacts): string {
  return carName(facts) || facts.vin || (facts.lotNumber ? `Lot ${facts.lotNumber}` : 'A lot without a name');
}
