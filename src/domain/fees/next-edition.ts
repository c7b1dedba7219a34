import { type Outcome, ok, refuse } from '../outcome.ts';
import { addDays } from '../time/calendar-day.ts';
import type { LocalDate } from '../time/local-date.ts';
import type { FeeEdition } from './fee-schedule.ts';

/**
 * Starts a new price list: the edition at `index` ends the day before `from`, and a copy of it holds from then on,
 * stands right behind it, and is ready to be changed.
 * @returns a refusal when the edition does not hold before `from`, or another one already starts on that day
 */
export function nextEdition(
  editions: readonly FeeEdition[],
  index: number,
  from: LocalDate,
): Outcome<readonly FeeEdition[]> {
  const old = editions[index];
  if (old === undefined) throw new RangeError(`no edition ${index} among ${editions.length}`);
  if (old.validFrom !== undefined && from <= old.validFrom) {
    return refuse('too-early', `These rates start on ${old.validFrom}. Choose a later date.`);
  }
  if (editions.some((edition) => edition.validFrom === from)) {
    return refuse('taken', `Rates already start on ${from}. Choose another date, or change those.`);
  }
  const lastDay = addDays(from, -1);
  const ended = { ...old, validTo: old.validTo !== undefined && old.validTo < lastDay ? old.validTo : lastDay };
  // A list that was to end later anyway leaves its end to the new one.
  const { validTo: oldEnd, ...rest } = old;
  const copy = { ...rest, validFrom: from, ...(oldEnd !== undefined && oldEnd >= from ? { validTo: oldEnd } : {}) };
  return ok(editions.toSpliced(index, 1, ended, copy));
}
