import { DEMO_CARS } from '../../../src/demo/demo-cars.ts';
import { demoVin } from '../../../src/demo/demo-vin.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { closeIn, type DayLot, dollars, type Later, retailFor } from './day-lot.ts';

const DAY = 24 * 60;

interface Row {
  readonly number: string;
  /** Minutes from the moment at which the manager looks: Saturday 12:30 PM. */
  readonly closes: number;
  readonly maxBid: number;
  /** The max bid on Thursday, where it has fallen since. */
  readonly maxBidThen?: number;
  readonly price: number;
  readonly proxy?: number;
  /** The price after the proxy was placed, and how many minutes ago it was seen. */
  readonly seen?: { readonly price: number; readonly minutesAgo: number };
}

const OLD = { minutesAgo: 44 * 60 };
const FRESH = { minutesAgo: 25 };

const ROWS: readonly Row[] = [
  { number: '480', closes: -40, maxBid: 11_000, price: 8200, proxy: 11_000, seen: { price: 9600, ...FRESH } },
  { number: '473', closes: 15, maxBid: 9400, price: 7900 },
  { number: '452', closes: 55, maxBid: 12_600, price: 10_000, proxy: 11_500, seen: { price: 11_800, ...FRESH } },
  {
    number: '459',
    closes: 58,
    maxBid: 13_200,
    maxBidThen: 14_000,
    price: 11_000,
    proxy: 14_000,
    seen: { price: 12_100, ...FRESH },
  },
  { number: '431', closes: 60, maxBid: 15_000, price: 12_000, proxy: 15_000, seen: { price: 13_400, ...FRESH } },
  { number: '438', closes: 60, maxBid: 12_000, price: 9000 },
  { number: '445', closes: 60, maxBid: 10_400, price: 7700, proxy: 10_400, seen: { price: 9100, ...FRESH } },
  { number: '466', closes: 110, maxBid: 9000, price: 7000, proxy: 8000, seen: { price: 7600, ...OLD } },
];
/** Nine others, on Monday and later. */
const DAYS_OFF = [2, 2, 2, 3, 3, 4, 5, 5, 6];

/** The lots of a Saturday at noon, all of them watched since Wednesday. */
export function saturdayLots(setup: Setup, now: number): readonly DayLot[] {
  const later = DAYS_OFF.map(
    (days, i): Row => ({ number: String(501 + i), closes: days * DAY, maxBid: 8000 + i * 900, price: 6000 }),
  );
  return [...ROWS, ...later].map((row, i) => lotOf(setup, now, row, i));
}

function lotOf(setup: Setup, now: number, row: Row, i: number): DayLot {
  const car = DEMO_CARS[(i * 3) % DEMO_CARS.length];
  // The three that close in one minute are at three venues.
  const venue = setup.venues[i % setup.venues.length];
  if (car === undefined || venue === undefined) throw new Error('the invented setup has no car or no venue');
  const facts: LotFacts = {
    vin: demoVin(car.maker, car.year, 8000 + i),
    year: car.year,
    make: car.make,
    model: car.model,
    ...(car.trim && { trim: car.trim }),
    miles: car.miles + i * 410,
    lotNumber: row.number,
    venueId: venue.id,
    venueName: venue.name,
    close: closeIn(row.closes, now),
    priceNow: dollars(row.price),
  };
  const retail = retailFor(row.maxBid, facts, setup);
  const then: Later[] = [];
  if (row.proxy !== undefined) then.push({ minutesAgo: 2 * DAY, proxy: row.proxy });
  if (row.seen) then.push({ minutesAgo: row.seen.minutesAgo, set: { priceNow: dollars(row.seen.price) } });
  if (row.maxBidThen !== undefined) then.push({ minutesAgo: 18 * 60, set: { retail } });
  return {
    facts: { ...facts, retail: row.maxBidThen === undefined ? retail : retailFor(row.maxBidThen, facts, setup) },
    addedMinutesAgo: 3 * DAY,
    then,
  };
}
