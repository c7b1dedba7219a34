import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { type Cents, cents } from '../domain/money/cents.ts';
import { ppm } from '../domain/money/rate.ts';
import type { PurseEntry } from '../domain/setup/purse-entry.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { MINUTE } from '../domain/time/units.ts';
import { dateIn } from '../domain/time/wall-clock.ts';
import type { NewLot } from '../journal/happenings/watching.ts';
import { type AftermathSale, demoAftermath } from './demo-aftermath.ts';
import { type DemoCall, demoCalls } from './demo-calls.ts';
import { DEMO_CARS, type DemoCar } from './demo-cars.ts';
import { closeInMinutes, closeInStoreTime, comingSaturday, type DemoVenue, doubtfulClose } from './demo-closes.ts';
import { ceilingsFor, claimsFor, compsFor } from './demo-evidence.ts';
import { type DemoPast, demoPast } from './demo-past.ts';
import { demoPurse } from './demo-purse.ts';
import { demoSeason, type SeasonLot } from './demo-season.ts';
import { DEMO_ZONE, demoSetup } from './demo-setup.ts';
import { demoVin } from './demo-vin.ts';

export interface DemoScenario {
  readonly setup: Setup;
  readonly lots: readonly NewLot[];
  /** The weeks before. */
  readonly past: DemoPast;
  /** Half a year before those. */
  readonly season: readonly SeasonLot[];
  /** Some of their wins and losses, and what became of them. */
  readonly aftermath: readonly AftermathSale[];
  /** What there is to buy with until the weekend is over. */
  readonly purse: PurseEntry;
  /** What was said back to calls of the week's lots. */
  readonly calls: readonly DemoCall[];
}

const VENUE_NAMES: Record<DemoVenue, string> = {
  saguaro: 'Saguaro Sale Yard',
  saltmarsh: 'Saltmarsh Dealer Sale',
  caliche: 'Caliche Flats Auto Sale',
  fogline: 'Fogline Motor Sale',
};
const VENUES: readonly DemoVenue[] = ['saguaro', 'saltmarsh', 'caliche', 'fogline'];

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
/** The next to close has comparables, ceilings and claims, all at once. */
const FULL_LOT = 2;
const SEALED_LOT = 12;
/** Worn, and so worth just what its venue's fee falls at: two ranges of bids pay, and none between them. */
const FALLING_FEE_LOT = 17;
const WORN = 0.795;
const FRIDAY = ['09:00', '11:30', '13:15', '15:00', '16:20', '17:05', '18:00', '19:30'];
const MONDAY = ['09:15', '10:00', '12:00', '13:45', '15:30'];
/** The place among this week's lots of the car that did not sell at an earlier sale. */
const AGAIN = 3;
/** Minutes from now: two have closed already, one closes within the quarter of an hour. */
const SOON = [-1500, -95, 14, 47, 110, 290, 430];

/** Where a close of the week goes that would come before that of the full lot, which is the one to look at first. */
const AFTER_FULL_LOT = 16;

function isBeforeFullLot(close: CloseTime, now: Instant): boolean {
  return close.instant > now && close.instant < now + AFTER_FULL_LOT * MINUTE;
}

/**
 * The invented dealer's week as seen at `now`. The same moment gives the same scenario; every car, venue and person in
 * it is made up.
 * @param ids makes the id of each lot
 */
export function demoScenario(now: Instant, ids: () => LotId): DemoScenario {
  const saturday = comingSaturday(now);
  const today = dateIn(DEMO_ZONE, now);
  const venueOf = (i: number): DemoVenue => VENUES[(i * 3 + Math.floor(i / 5)) % VENUES.length] ?? 'saguaro';
  const onDay = (date: typeof saturday, times: readonly string[]) =>
    times.map((time) => (venue: DemoVenue) => {
      const close = closeInStoreTime(venue, date, time, now);
      return isBeforeFullLot(close, now) ? closeInMinutes(venue, AFTER_FULL_LOT, now) : close;
    });
  const closes: ((venue: DemoVenue) => CloseTime)[] = [
    ...SOON.map((minutes) => (venue: DemoVenue) => closeInMinutes(venue, minutes, now)),
    ...onDay(addDays(saturday, -1), FRIDAY),
    ...onDay(saturday, SATURDAY),
    ...onDay(addDays(saturday, 2), MONDAY),
    () => doubtfulClose(addDays(saturday, 3), now),
  ];
  const lots = closes.map((closeAt, i): NewLot => {
    const venue = i === closes.length - 1 ? 'saltmarsh' : venueOf(i);
    const facts = demoFacts(i, venue, closeAt(venue), today);
    return { id: ids(), facts, evidence: evidenceOf(facts) };
  });
  // One more that nobody has said the close of yet: the car of the very first lot, back with fewer miles than it had.
  const first = lots[0]?.facts;
  const open: LotFacts = {
    ...demoFacts(closes.length, 'fogline', undefined, today),
    ...(first && sameCar(first)),
    miles: (first?.miles ?? 20_000) - 18_400,
  };
  const setup = demoSetup(today);
  const factsOf = (i: number, venue: DemoVenue, close: LotFacts['close']) => demoFacts(i, venue, close, today);
  // A hundred max bids and more to work out, which not everyone who wants the week wants.
  let past: DemoPast | undefined;
  let season: readonly SeasonLot[] | undefined;
  return {
    setup,
    lots: [...lots, { id: ids(), facts: open, evidence: evidenceOf(open) }],
    purse: demoPurse(now, saturday),
    calls: demoCalls(SOON.length + FRIDAY.length),
    get past() {
      past ??= demoPast({ setup, now, saturday, today, factsOf, again: sameCar(lots[AGAIN]?.facts ?? {}), ids });
      return past;
    },
    get season() {
      season ??= demoSeason({ setup, now, today, factsOf, ids });
      return season;
    },
    aftermath: demoAftermath(now, VENUE_NAMES, ids),
  };
}

function demoFacts(i: number, venue: DemoVenue, close: CloseTime | undefined, today: LocalDate): LotFacts {
  const car = DEMO_CARS[(i * 7) % DEMO_CARS.length] ?? (DEMO_CARS[0] as DemoCar);
  const likely = toHundreds(car.retail * (1 + wave(i, 5) * 0.04) * (i === FALLING_FEE_LOT ? WORN : 1));
  // Well known, or the chance of a loss would refuse the prices past the fall.
  const spread = i === FALLING_FEE_LOT ? 0.01 : car.spread;
  const unfinished = i % 13 === 9;
  const miles = car.miles + Math.round(wave(i, 3) * 6000);
  const claims = i % 5 === 1 || i === FULL_LOT ? claimsFor(i, miles) : [];
  const comps = i % 6 === 2 ? compsFor(car, i, today) : [];
  const ceilings = i % 8 === FULL_LOT ? ceilingsFor(car, i) : [];
  return {
    vin: demoVin(car.maker, car.year, i * 137 + 11, i === 19 || i === 33),
    year: car.year,
    make: car.make,
    model: car.model,
    ...(car.trim === '' ? {} : { trim: car.trim }),
    miles,
    lotNumber: String(200 + i * 3),
    venueId: venue,
    venueName: VENUE_NAMES[venue],
    seller: ['A rental fleet', 'A utility’s fleet', 'A franchised dealer', 'A bank'][i % 4] ?? '',
    ...(close === undefined ? {} : { close }),
    priceNow: toHundreds(car.retail * (0.42 + (i === FALLING_FEE_LOT ? 0 : 0.3 * Math.abs(wave(i, 7))))),
    ...(unfinished
      ? {}
      : {
          retail: {
            low: toHundreds((likely / 100) * (1 - spread)),
            likely,
            high: toHundreds((likely / 100) * (1 + spread)),
          },
        }),
    recon: reconFor(i),
    ...(i % 9 === 4 ? { titleId: 'rebuilt' } : { titleId: 'clean' }),
    ...(i % 11 === 6 ? { transport: cents(95_000) } : {}),
    ...(i % 4 === 0 && i > 6 ? { proxy: toHundreds(car.retail * 0.55) } : {}),
    ...(claims.length === 0 ? {} : { claims }),
    ...(comps.length === 0 ? {} : { comps }),
    ...(ceilings.length === 0 ? {} : { ceilings }),
    ...(i === SEALED_LOT ? { sealed: { rival: rivalFor(car.retail) } } : {}),
  };
}

const rivalFor = (retail: number) => ({
  low: toHundreds(retail * 0.58),
  likely: toHundreds(retail * 0.66),
  high: toHundreds(retail * 0.74),
});

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

/** What stays the same of a car from one sale to the next. */
function sameCar({ vin, year, make, model, trim }: LotFacts): LotFacts {
  return {
    ...(vin !== undefined && { vin }),
    ...(year !== undefined && { year }),
    ...(make !== undefined && { make }),
    ...(model !== undefined && { model }),
    ...(trim !== undefined && { trim }),
  };
}
