import { DEMO_CARS } from '../../../src/demo/demo-cars.ts';
import { demoVin } from '../../../src/demo/demo-vin.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { closeIn, type DayLot, dollars, retailFor } from './day-lot.ts';

const DAY = 24 * 60;
/** Of a clock that stands at Thursday 4 PM: the first lot closes on Friday at 5 PM, the last on Saturday at 4 PM. */
const [FIRST_CLOSE, LAST_CLOSE] = [25 * 60, 48 * 60];
const LOTS = 60;
/** Three vans of one kind beside lot 427. */
const VANS = ['431', '438', '445'];

type Kind = 'to-place' | 'price-over' | 'no-venue' | 'no-retail' | 'standing' | 'outbid' | 'over-max' | 'barred';

/** How many there are of each, in the order in which they take their places among the sixty. */
const KINDS: readonly (readonly [Kind, number])[] = [
  ['to-place', 20],
  ['price-over', 6],
  ['no-venue', 8],
  ['no-retail', 6],
  ['standing', 12],
  ['outbid', 4],
  ['over-max', 2],
  ['barred', 2],
];

/** Sixty lots at four venues on a Thursday afternoon, mixed as a list by close mixes them. */
export function thursdayLots(setup: Setup, now: number): readonly DayLot[] {
  const kinds = KINDS.flatMap(([kind, count]) => Array.from({ length: count }, () => kind));
  // 7 has no divisor in common with 60, so each lot gets a place of its own.
  return kinds
    .map((kind, i) => ({ kind, place: (i * 7) % LOTS }))
    .map(({ kind, place }, i) => lotOf(setup, now, { kind, place, i }));
}

interface Placed {
  readonly kind: Kind;
  readonly place: number;
  readonly i: number;
}

function lotOf(setup: Setup, now: number, { kind, place, i }: Placed): DayLot {
  const number = i === 0 ? '427' : (VANS[i - 1] ?? String(600 + i));
  const car = DEMO_CARS[i < 4 ? 3 : i % DEMO_CARS.length];
  const venue = setup.venues[i % setup.venues.length];
  if (car === undefined || venue === undefined) throw new Error('the invented setup has no car or no venue');
  const maxBid = 6000 + ((i * 1700) % 21_000);
  const facts: LotFacts = {
    vin: demoVin(car.maker, car.year, 7000 + i),
    year: car.year,
    make: car.make,
    model: car.model,
    ...(car.trim && { trim: car.trim }),
    miles: car.miles + i * 310,
    lotNumber: number,
    ...(kind !== 'no-venue' && { venueId: venue.id, venueName: venue.name }),
    close: closeIn(FIRST_CLOSE + Math.round((place * (LAST_CLOSE - FIRST_CLOSE)) / (LOTS - 1)), now),
  };
  const known = { ...facts, venueId: venue.id, venueName: venue.name };
  const retail = retailFor(maxBid, known, setup);
  const priced = (price: number): LotFacts => ({ ...facts, retail, priceNow: dollars(price) });
  const lot = (first: LotFacts, ...then: NonNullable<DayLot['then']>): DayLot => ({
    facts: first,
    addedMinutesAgo: 2 * DAY,
    then,
  });
  switch (kind) {
    case 'to-place':
    case 'no-venue':
      return lot(priced(maxBid - 1500 - i * 10));
    case 'price-over':
      return lot(priced(maxBid + 400 + i * 50));
    case 'no-retail':
      return lot({ ...facts, priceNow: dollars(maxBid - 1200) });
    case 'standing':
      return lot(priced(maxBid - 2000), { minutesAgo: DAY, proxy: maxBid }, seen(maxBid - 1800));
    case 'outbid':
      return lot(priced(maxBid - 2400), { minutesAgo: DAY, proxy: maxBid - 1500 }, seen(maxBid - 1000));
    case 'over-max':
      return lot(
        { ...priced(maxBid - 2500), retail: retailFor(maxBid + 800, known, setup) },
        { minutesAgo: DAY, proxy: maxBid + 800 },
        { minutesAgo: 60, set: { retail, priceNow: dollars(maxBid - 900) } },
      );
    case 'barred':
      return lot({ ...priced(maxBid - 1000), titleId: 'junk' });
  }
}

const seen = (price: number) => ({ minutesAgo: 60, set: { priceNow: dollars(price) } });
