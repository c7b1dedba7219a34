import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { type Cents, cents } from '../domain/money/cents.ts';
import { ppm } from '../domain/money/rate.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import { dateIn } from '../domain/time/wall-clock.ts';
import type { Evidence, NewLot } from '../journal/entry.ts';
import { DEMO_CARS, type DemoCar } from './demo-cars.ts';
import { closeInMinutes, closeInStoreTime, comingSaturday, type DemoVenue, doubtfulClose } from './demo-closes.ts';
import { claimsFor, compsFor } from './demo-evidence.ts';
import { DEMO_ZONE, demoSetup } from './demo-setup.ts';
import { demoVin } from './demo-vin.ts';

export interface DemoScenario {
  readonly setup: Setup;
  readonly lots: readonly NewLot[];
}

const VENUE_NAMES: Record<DemoVenue, string> = {
  saguaro: 'Saguaro Sale Yard',
  tidewater: 'Tidewater Dealer Sale',
  caliche: 'Caliche Flats Auto Sale',
  fogline: 'Fogline Motor Sale',
};
const VENUES: readonly DemoVenue[] = ['saguaro', 'tidewater', 'caliche', 'fogline'];

/** Store times on the busy Saturday; some within three minutes of each other, most of them in the rush. */
const SATURDAY = [
  '08:40',
  '10:05',
  '10:30',
  '11:00',
  '11:02',
  '11:45',
  '12:05',
  '12:06',
  '12:08',
  '13:10',
  '13:30',
  '14:00',
  '14:02',
  '14:45',
  '15:20',
  '16:00',
  '16:50',
  '17:15',
  '18:30',
  '19:00',
];
const FRIDAY = ['09:00', '11:30', '13:15', '15:00', '16:20', '17:05', '18:00', '19:30'];
const MONDAY = ['09:15', '10:00', '12:00', '13:45', '15:30'];
/** Minutes from now: two have closed already, one closes within the quarter of an hour. */
const SOON = [-1500, -95, 14, 47, 110, 290, 430];

/**
 * The invented dealer's week as seen at `now`. The same moment gives the same scenario; every car, venue and person in
 * it is made up.
 * @param ids makes the id of each lot
 */
export function demoScenario(now: Instant, ids: () => LotId): DemoScenario {
  const saturday = comingSaturday(now);
  const venueOf = (i: number): DemoVenue => VENUES[(i * 3 + Math.floor(i / 5)) % VENUES.length] ?? 'saguaro';
  const onDay = (date: typeof saturday, times: readonly string[]) =>
    times.map((time) => (venue: DemoVenue) => closeInStoreTime(venue, date, time, now));
  const closes: ((venue: DemoVenue) => CloseTime)[] = [
    ...SOON.map((minutes) => (venue: DemoVenue) => closeInMinutes(venue, minutes, now)),
    ...onDay(addDays(saturday, -1), FRIDAY),
    ...onDay(saturday, SATURDAY),
    ...onDay(addDays(saturday, 2), MONDAY),
    () => doubtfulClose(addDays(saturday, 3), now),
  ];
  const lots = closes.map((closeAt, i): NewLot => {
    const venue = i === closes.length - 1 ? 'tidewater' : venueOf(i);
    const facts = demoFacts(i, venue, closeAt(venue));
    return { id: ids(), facts, evidence: evidenceOf(facts) };
  });
  // One more that nobody has said the close of yet.
  const open = demoFacts(closes.length, 'fogline', undefined);
  return {
    setup: demoSetup(dateIn(DEMO_ZONE, now)),
    lots: [...lots, { id: ids(), facts: open, evidence: evidenceOf(open) }],
  };
}

function demoFacts(i: number, venue: DemoVenue, close: CloseTime | undefined): LotFacts {
  const car = DEMO_CARS[(i * 7) % DEMO_CARS.length] ?? (DEMO_CARS[0] as DemoCar);
  const likely = toHundreds(car.retail * (1 + wave(i, 5) * 0.04));
  const unfinished = i % 13 === 9;
  const claims = i % 5 === 1 ? claimsFor(car, i) : [];
  const comps = i % 6 === 2 ? compsFor(car, i) : [];
  return {
    vin: demoVin(car.maker, car.year, i * 137 + 11, i === 19 || i === 33),
    year: car.year,
    make: car.make,
    model: car.model,
    ...(car.trim === '' ? {} : { trim: car.trim }),
    miles: car.miles + Math.round(wave(i, 3) * 6000),
    lotNumber: String(200 + i * 3),
    venueId: venue,
    venueName: VENUE_NAMES[venue],
    seller: ['A rental fleet', 'A utility’s fleet', 'A franchised dealer', 'A bank'][i % 4] ?? '',
    ...(close === undefined ? {} : { close }),
    priceNow: toHundreds(car.retail * (0.42 + 0.3 * Math.abs(wave(i, 7)))),
    ...(unfinished
      ? {}
      : {
          retail: {
            low: toHundreds((likely / 100) * (1 - car.spread)),
            likely,
            high: toHundreds((likely / 100) * (1 + car.spread)),
          },
        }),
    recon: reconFor(i),
    ...(i % 9 === 4 ? { titleId: 'rebuilt' } : { titleId: 'clean' }),
    ...(i % 11 === 6 ? { transport: cents(95_000) } : {}),
    ...(i % 4 === 0 && i > 6 ? { proxy: toHundreds(car.retail * 0.55) } : {}),
    ...(claims.length === 0 ? {} : { claims }),
    ...(comps.length === 0 ? {} : { comps }),
  };
}

function reconFor(i: number): NonNullable<LotFacts['recon']> {
  const line = (label: string, low: number, likely: number, high: number, percent: number) => ({
    label,
    amount: { low: cents(low * 100), likely: cents(likely * 100), high: cents(high * 100) },
    chance: ppm(percent * 10_000),
  });
  const all = [
    line('Tires', 420, 640, 900, 100),
    line('Detail and touch-up', 150, 220, 380, 100),
    line('Brakes', 300, 450, 780, 60),
    line('Decals off and buffed', 200, 350, 650, 80),
    line('Lift gate', 250, 600, 2400, 25),
    line('Windshield', 280, 340, 520, 35),
  ];
  return all.filter((_, k) => (i + k) % 3 !== 0);
}

/** As if a file had brought them, so that the sources can be looked at. */
function evidenceOf(facts: LotFacts): Record<string, Evidence> {
  const close = facts.close && {
    from: 'file',
    text: facts.close.text,
    sure: facts.close.doubts.length > 0 ? 'doubtful' : 'certain',
  };
  return close === undefined ? {} : { close: close as Evidence };
}

/** A number from −1 to 1 that goes with the lot's place in the list: varied, and the same every time. */
const wave = (i: number, step: number) => Math.sin(i * step * 1.7);

const toHundreds = (dollars: number): Cents => cents(Math.round(dollars / 100) * 10_000);
