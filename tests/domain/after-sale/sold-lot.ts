import type { VenuePlace } from '../../../src/domain/after-sale/venue-place.ts';
import type { SoldLot } from '../../../src/domain/after-sale/win.ts';
import { FEDERAL_CALENDAR } from '../../../src/domain/deadline/business-calendar.ts';
import type { DisputeRecord } from '../../../src/domain/dispute/dispute.ts';
import type { FeeSchedule } from '../../../src/domain/fees/fee-schedule.ts';
import { feeScheduleSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { venueSchema } from '../../../src/domain/setup/venue.ts';
import { instant } from '../../../src/domain/time/instant.ts';

/** A moment on the clock of Phoenix, seven hours behind all year. */
export const phoenix = (text: string) => instant(Date.parse(`${text}-07:00`));

export const SALTGRASS = venueSchema.parse({
  id: 'saltgrass',
  name: 'Saltgrass',
  zone: 'America/Phoenix',
  feeScheduleIds: ['saltgrass-buy'],
  increments: [{ fromCents: 0, stepCents: 5000 }],
  transport: { kind: 'flat', cents: 0 },
  afterSale: {
    steps: {
      pay: { amount: 2, unit: 'business-days', from: 'sale', cutOff: '17:00' },
      title: { amount: 30, unit: 'calendar-days', from: 'sale', cutOff: '17:00' },
      inspect: { amount: 1, unit: 'business-days', from: 'delivery', cutOff: '17:00' },
    },
    disputes: {
      'hidden-defect': {
        claim: { amount: 7, unit: 'calendar-days', from: 'delivery', cutOff: '17:00' },
        answer: { amount: 48, unit: 'hours', from: 'notice' },
      },
      'title-missing': { claim: { amount: 45, unit: 'calendar-days', from: 'sale', cutOff: '17:00' } },
    },
  },
});

/** Where the venue's own terms are written down. */
export const PLACE: VenuePlace = {
  venue: SALTGRASS,
  name: SALTGRASS.name,
  zone: SALTGRASS.zone,
  calendar: FEDERAL_CALENDAR,
  rules: SALTGRASS.afterSale,
};

/** Where they are not. */
export const NO_RULES: VenuePlace = { ...PLACE, rules: undefined };

/** $300 and one percent. */
export const FEES: { feeSchedules: FeeSchedule[] } = {
  feeSchedules: [
    feeScheduleSchema.parse({
      id: 'saltgrass-buy',
      name: 'Saltgrass buy fees',
      editions: [
        {
          tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 25_000, ratePpm: 10_000 }] }],
          charges: [{ label: 'Papers', cents: 5000 }],
        },
      ],
    }),
  ],
};

/** Won for $12,400 on the Tuesday before Thanksgiving, at ten in the morning in Phoenix. */
export function wonLot(more: Partial<SoldLot> = {}): SoldLot {
  return {
    facts: { make: 'Larkspur', venueId: 'saltgrass' },
    ended: { result: { ended: 'won', hammerCents: cents(1_240_000) }, at: phoenix('2026-11-24T10:00') },
    steps: {},
    disputes: [],
    ...more,
  };
}

export function dispute(more: Partial<DisputeRecord> = {}): DisputeRecord {
  return {
    side: 'ours',
    reason: 'hidden-defect',
    words: 'The gearbox slips when warm.',
    at: phoenix('2026-12-02T09:00'),
    needs: ['Pictures of the defect', 'Bill of sale'],
    steps: [],
    ...more,
  };
}
