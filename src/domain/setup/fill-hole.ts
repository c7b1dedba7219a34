import type { FeeBand, FeeSchedule } from '../fees/fee-schedule.ts';
import { type Cents, ZERO } from '../money/cents.ts';
import type { Ppm } from '../money/rate.ts';
import type { Setup } from './setup.ts';
import { confirmedTitle } from './title-figure.ts';
import type { Venue } from './venue.ts';

// Each answers one question that a max bid waits for, and gives the sections of the setup that change by it.

/** Whether the bands charge nothing at any price. */
export const isFree = (bands: readonly FeeBand[]): boolean =>
  bands.every(({ flatCents, ratePpm, minimumCents = 0 }) => flatCents === 0 && ratePpm === 0 && minimumCents === 0);

/**
 * With the fees that a buyer pays at a venue. Bands that charge nothing say that it charges none.
 * @param bands whole and in order of price, as they were read
 * @param freshId of the schedule, where a new one is made
 */
export function withVenueFees(
  { venues, feeSchedules }: Pick<Setup, 'venues' | 'feeSchedules'>,
  venueId: string,
  bands: readonly FeeBand[],
  freshId: string,
): Pick<Setup, 'venues' | 'feeSchedules'> {
  const venue = venues.find(({ id }) => id === venueId);
  if (venue === undefined) return { venues, feeSchedules };
  if (isFree(bands)) return { venues: replaced(venues, { ...venue, noBuyFees: true }), feeSchedules };
  const { noBuyFees: _, ...charging } = venue;
  const blank = feeSchedules.find((schedule) => venue.feeScheduleIds.includes(schedule.id) && isBlank(schedule));
  const table = { label: 'Buy fee', rounding: 'half-up' as const, bands: [...bands] };
  const editions = [{ tables: [table], charges: [] }];
  if (blank !== undefined) {
    return { venues: replaced(venues, charging), feeSchedules: replaced(feeSchedules, { ...blank, editions }) };
  }
  const made: FeeSchedule = { id: freshId, name: `${venue.name} buy fees`.slice(0, 80), editions };
  const paying = { ...charging, feeScheduleIds: [...venue.feeScheduleIds, made.id] };
  return { venues: replaced(venues, paying), feeSchedules: [...feeSchedules, made] };
}

/** Begun and never filled in: it charges nothing on any date. */
const isBlank = ({ editions }: FeeSchedule): boolean =>
  editions.every(
    ({ tables, charges }) => charges.every(({ cents }) => cents === 0) && tables.every(({ bands }) => isFree(bands)),
  );

/**
 * A venue with the price of bringing one car home; $0 says that delivery is free.
 * @param amount whole cents, 0 or more
 */
export function withTransport(venue: Venue, amount: Cents): Venue {
  const { noTransport: _, ...rest } = venue;
  const transport = { kind: 'flat', cents: amount } as const;
  return amount === ZERO ? { ...rest, transport, noTransport: true } : { ...rest, transport };
}

/** With the dealer's own figure of what a title leaves of clean retail. */
export const withTitleFigure = (
  { titles }: Pick<Setup, 'titles'>,
  id: string,
  keepsPpm: Ppm,
): Pick<Setup, 'titles'> => ({
  titles: titles.map((title) => (title.id === id ? confirmedTitle(title, keepsPpm) : title)),
});

const replaced = <Entry extends { readonly id: string }>(list: readonly Entry[], entry: Entry): Entry[] =>
  list.map((one) => (one.id === entry.id ? entry : one));
