import { lotTitle } from '../../domain/lot/car-name.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';

/** What a car is called in a bill, a table and the journal: its name and its lot number. */
export function folderName(facts: LotFacts): string {
  const title = lotTitle(facts);
  return facts.lotNumber === undefined || title === `Lot ${facts.lotNumber}`
    ? title
    : `${title}, lot ${facts.lotNumber}`;
}
