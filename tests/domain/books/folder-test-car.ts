import { demoSetup } from '../../../src/demo/demo-setup.ts';
import { readCloseTime } from '../../../src/domain/close/read-close-time.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';

export const day = (text: string) => text as LocalDate;
export const dollars = (amount: number): Cents => cents(Math.round(amount * 100));

/** The invented dealer's setup, with price lists that change thirty days after November 25. */
export const CONTEXT = pricingContext(demoSetup(day('2026-11-25')));

const close = readCloseTime('2026-11-28 14:05', {
  now: instant(Date.UTC(2026, 10, 25, 18)),
  storeZone: zone('America/Boise'),
  venueZone: zone('America/Phoenix'),
});
if (!close.ok) throw new Error(close.message);

/** An invented van that was won at Saguaro Sale Yard on November 28. */
export const FACTS: LotFacts = {
  vin: '1M8GDM9AXKP042788',
  year: 2021,
  make: 'Larkspur',
  model: 'Hauler 20',
  lotNumber: '218',
  venueId: 'saguaro',
  venueName: 'Saguaro Sale Yard',
  close: close.value,
  retail: { low: dollars(16_500), likely: dollars(18_000), high: dollars(19_800) },
  recon: [
    { label: 'Tires', amount: { low: dollars(420), likely: dollars(640), high: dollars(900) }, chance: ppm(1_000_000) },
  ],
};
