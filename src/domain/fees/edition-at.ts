import { type Outcome, ok, type Refusal, refuse } from '../outcome.ts';
import type { LocalDate } from '../time/local-date.ts';
import type { FeeEdition, FeeSchedule } from './fee-schedule.ts';

export type EditionRefusal = Refusal & { readonly reason: 'no-edition' | 'needs-date' };

/**
 * The rates of a schedule on the day of the sale. The first and the last day both count. If several apply, the rates that
 * started last are used: new rates replace the old ones even if nobody entered the end of the old ones.
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
