import { tidyFigure } from '../money/written-number.ts';
import { type Outcome, ok, refuse } from '../outcome.ts';

/** Older cars stand in museums, and 1900 and 1904 are what spreadsheets make of an empty date. */
export const FIRST_YEAR = 1920;
/** Older cars are rare enough here that two digits are more likely a slip; from this year on VINs have 17 characters. */
const FIRST_VIN_YEAR = 1981;

/**
 * Reads a model year: "2021", "'21", "MY21", and "2021.0" as spreadsheets leave it. Two digits are taken as this
 * century's up to two years ahead, as the last century's after that.
 * @param thisYear the calendar year now; a model year more than two ahead is refused
 */
export function parseYear(text: string, thisYear: number): Outcome<number> {
  const tidy = tidyFigure(text);
  if (tidy === '') return refuse('empty', 'Write the model year, such as 2021.');
  const digits = /^(?:my ?|')?(\d{4}|\d{2})(?:\.0+)?$/i.exec(tidy)?.[1];
  if (digits === undefined)
    return refuse('not-a-year', `“${tidy.slice(0, 40)}” is not a model year. Write it as 2021.`);
  const latest = thisYear + 2;
  const year = digits.length === 4 ? Number(digits) : inCentury(Number(digits), latest);
  if (digits.length === 2 && year < FIRST_VIN_YEAR) {
    return refuse('out-of-range', `“${tidy}” is not a likely model year. Write all four digits.`);
  }
  if (year < FIRST_YEAR || year > latest) {
    return refuse('out-of-range', `${year} can’t be a model year now. Write one from ${FIRST_YEAR} to ${latest}.`);
  }
  return ok(year);
}

function inCentury(lastTwo: number, latest: number): number {
  const thisCentury = latest - (latest % 100) + lastTwo;
  return thisCentury > latest ? thisCentury - 100 : thisCentury;
}
