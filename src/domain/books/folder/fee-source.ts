import { editionAt } from '../../fees/edition-at.ts';
import type { FeeBand, FeeEdition, FeeSchedule } from '../../fees/fee-schedule.ts';
import { feeOf } from '../../fees/fees-at.ts';
import { type Cents, cents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import { percentInWords } from '../../setup/value-words.ts';
import type { LocalDate } from '../../time/local-date.ts';

/** The fee of one line of a fee schedule at a price, and which line that is. */
export interface FeeSource {
  readonly label: string;
  readonly cents: Cents;
  /** "“Saguaro buyer fees”, from $8,000: $450". */
  readonly line: string;
}

/**
 * Every fee and charge of some price lists at a hammer price, each with the line that says so. A list that holds no
 * edition on that day is left out, and named.
 * @param date the day of the sale at the venue; undefined when it is not known
 */
export function feeSources(
  schedules: readonly FeeSchedule[],
  date: LocalDate | undefined,
  price: Cents,
): { readonly sources: readonly FeeSource[]; readonly problems: readonly string[] } {
  const sources: FeeSource[] = [];
  const problems: string[] = [];
  for (const schedule of schedules) {
    const edition = editionAt(schedule, date);
    if (!edition.ok) {
      problems.push(edition.message);
      continue;
    }
    const list = `“${schedule.name}”${since(edition.value)}`;
    for (const table of edition.value.tables) {
      const band = table.bands.findLast(({ fromCents }) => fromCents <= price);
      const line = band === undefined ? list : `${list}, from ${formatMoney(band.fromCents)}: ${bandInWords(band)}`;
      sources.push({ label: table.label, cents: cents(feeOf(table, price)), line });
    }
    for (const { label, cents: amount } of edition.value.charges)
      sources.push({ label, cents: amount, line: `${list}: ${formatMoney(amount)} at every price` });
  }
  return { sources, problems };
}

const since = ({ validFrom }: FeeEdition): string => (validFrom === undefined ? '' : ` of ${validFrom}`);

/** "$150 and 4.25%, at least $200 and at most $725". */
export function bandInWords({ flatCents, ratePpm, minimumCents, maximumCents }: FeeBand): string {
  const parts = [
    ...(flatCents > 0 || ratePpm === 0 ? [formatMoney(flatCents)] : []),
    ...(ratePpm > 0 ? [`${percentInWords(ratePpm)}`] : []),
  ];
  const limits = [
    ...(minimumCents === undefined ? [] : [`at least ${formatMoney(minimumCents)}`]),
    ...(maximumCents === undefined ? [] : [`at most ${formatMoney(maximumCents)}`]),
  ];
  return parts.join(' and ') + (limits.length === 0 ? '' : `, ${limits.join(' and ')}`);
}
