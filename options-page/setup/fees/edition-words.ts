import type { FeeEdition } from '../../../src/domain/fees/fee-schedule.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';

/** The dates of some rates, in words. */
export function editionDates({ validFrom, validTo }: FeeEdition): string {
  if (validFrom === undefined) return validTo === undefined ? 'at all times' : `until ${dateInWords(validTo)}`;
  return validTo === undefined
    ? `from ${dateInWords(validFrom)}`
    : `${dateInWords(validFrom)} to ${dateInWords(validTo)}`;
}

/** How it stands to today: "now", "over", "later". */
export function editionState({ validFrom, validTo }: FeeEdition, today: LocalDate): string {
  if (validTo !== undefined && validTo < today) return 'over';
  if (validFrom !== undefined && validFrom > today) return 'later';
  return 'now';
}

/** Position of the rates of today; the last ones if there are none. */
export function holdingEdition(editions: readonly FeeEdition[], today: LocalDate): number {
  const holding = editions.findLastIndex((edition) => editionState(edition, today) === 'now');
  return holding < 0 ? editions.length - 1 : holding;
}
