import { type Outcome, ok, type Refusal, refuse } from '../outcome.ts';
import type { LocalDate } from '../time/local-date.ts';
import type { FeeEdition, FeeSchedule } from './fee-schedule.ts';

export type EditionRefusal = Refusal & { readonly reason: 'no-edition' | 'needs-date' };

/**
 * The edition of a schedule that holds on the day of the sale. Both ends of an edition count. Where several hold, the
 * one that started last does: a new price list replaces the old one even when nobody wrote down the old one's end.
 * @param date the sale's own calendar date, in the venue's zone; undefined when the close is not known. Then a single
 *   edition without an end is taken, since nothing else can be meant.
 */
export function editionAt(schedule: FeeSchedule, date: LocalDate | undefined): Outcome<FeeEdition, EditionRefusal> {
  if (date === undefined) {
    const [only, ...more] = schedule.editions;
    if (only !== undefined && more.length === 0 && only.validTo === undefined) return ok(only);
    return refuse(
      'needs-date',
      `The fees of “${schedule.name}” change with the date. Enter when the lot closes, so the right rates are used.`,
    );
  }
  let found: FeeEdition | undefined;
  for (const edition of schedule.editions) {
    const holds = (edition.validFrom ?? '') <= date && date <= (edition.validTo ?? '9999-12-31');
    if (holds && (found === undefined || (edition.validFrom ?? '') >= (found.validFrom ?? ''))) found = edition;
  }
  if (found !== undefined) return ok(found);
  return refuse(
    'no-edition',
    `“${schedule.name}” has no rates for ${date}. Add them, or correct the dates, under Setup.`,
  );
}
