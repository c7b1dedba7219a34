import { type BusinessCalendar, FEDERAL_CALENDAR } from '../deadline/business-calendar.ts';
import { type DeadlineRule, deadlineRuleSchema } from '../deadline/deadline-rule.ts';
import type { LotFacts } from '../lot/lot.ts';
import type { AfterSaleRules, WinStep } from '../setup/after-sale-rules.ts';
import type { Setup } from '../setup/setup.ts';
import type { Venue } from '../setup/venue.ts';
import type { Zone } from '../time/zone.ts';

/** Where a lot was sold, as far as deadlines go. */
export interface VenuePlace {
  /** Undefined when the setup does not know the venue. */
  readonly venue?: Venue | undefined;
  /** Of the venue, as it was written where the setup does not know it. */
  readonly name: string;
  /** The store's where the venue's is not known. */
  readonly zone: Zone;
  readonly calendar: BusinessCalendar;
  /** Undefined until the user has copied them into the setup. */
  readonly rules?: AfterSaleRules | undefined;
}

/** The place of each lot under one setup. */
export function venuePlaces(setup: Pick<Setup, 'venues' | 'store'>): (facts: LotFacts) => VenuePlace {
  const byId = new Map(setup.venues.map((venue) => [venue.id, venue]));
  const byName = new Map(setup.venues.map((venue) => [venue.name.trim().toLowerCase(), venue]));
  return ({ venueId, venueName }) => {
    const venue = venueId === undefined ? byName.get(venueName?.trim().toLowerCase() ?? '') : byId.get(venueId);
    return {
      venue,
      name: venue?.name ?? venueName ?? venueId ?? 'The venue',
      zone: venue?.zone ?? setup.store.zone,
      calendar: venue?.afterSale?.calendar ?? FEDERAL_CALENDAR,
      rules: venue?.afterSale,
    };
  };
}

/** The rule for a step of a win. Where the terms name none for paying, the venue's days to pay give one. */
export function stepRule({ rules, venue }: VenuePlace, step: WinStep): DeadlineRule | undefined {
  const rule = rules?.steps[step];
  if (rule !== undefined || step !== 'pay' || venue?.payWithinDays === undefined) return rule;
  return deadlineRuleSchema.parse({ amount: venue.payWithinDays, unit: 'calendar-days', from: 'sale' });
}
