import { type Setup, setupSectionsSchema } from '../domain/setup/setup.ts';
import { STARTING_TITLES } from '../domain/setup/starting-titles.ts';
import { confirmedTitle } from '../domain/setup/title-figure.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { zone } from '../domain/time/zone.ts';
import { demoFees } from './demo-fees.ts';
import { demoReconTemplates } from './demo-recon.ts';
import { demoStock } from './demo-stock.ts';
import { DEMO_TERMS } from './demo-terms.ts';

export const DEMO_STORE = 'Cottonwood Truck & Van';
export const DEMO_ZONE = zone('America/Boise');

const dollars = (amount: number) => amount * 100;
const steps = (...bands: [from: number, step: number][]) =>
  bands.map(([from, step]) => ({ fromCents: dollars(from), stepCents: dollars(step) }));

const VENUES = [
  {
    id: 'saguaro',
    name: 'Saguaro Sale Yard',
    zone: 'America/Phoenix',
    feeScheduleIds: ['saguaro-buy'],
    increments: steps([0, 25], [5000, 50], [15_000, 100]),
    transport: { kind: 'flat', cents: dollars(780) },
    payWithinDays: 2,
    afterSale: DEMO_TERMS.saguaro,
  },
  {
    id: 'saltmarsh',
    name: 'Saltmarsh Dealer Sale',
    zone: 'America/New_York',
    feeScheduleIds: ['saltmarsh-buy'],
    increments: steps([0, 100]),
    transport: { kind: 'per-mile', miles: 2410, centsPerMile: 62, minimumCents: dollars(500) },
    payWithinDays: 3,
    afterSale: DEMO_TERMS.saltmarsh,
  },
  {
    id: 'caliche',
    name: 'Caliche Flats Auto Sale',
    zone: 'America/Chicago',
    feeScheduleIds: ['caliche-buy'],
    increments: steps([0, 25]),
    transport: { kind: 'per-mile', miles: 1490, centsPerMile: 66, minimumCents: dollars(450) },
    payWithinDays: 2,
    afterSale: DEMO_TERMS.caliche,
  },
  {
    id: 'fogline',
    name: 'Fogline Motor Sale',
    zone: 'America/Los_Angeles',
    feeScheduleIds: ['fogline-buy'],
    increments: steps([0, 50], [10_000, 100]),
    transport: { kind: 'flat', cents: dollars(690) },
    payWithinDays: 5,
    afterSale: DEMO_TERMS.fogline,
  },
];

/** The invented dealer: Cottonwood Truck & Van, used work trucks and vans, Idaho, Mountain Time, busy Saturdays. */
export function demoSetup(today: LocalDate): Setup {
  return setupSectionsSchema.parse({
    store: { name: DEMO_STORE, zone: DEMO_ZONE, contact: 'The buyer’s cell, taped to the desk phone' },
    venues: VENUES,
    feeSchedules: demoFees(today),
    // What these cars bring him he has long known.
    titles: STARTING_TITLES.map((title) => confirmedTitle(title, title.keepsPpm)),
    rules: { dollarsCents: dollars(1500), shareOfRetailPpm: 60_000, lossChancePpm: 250_000 },
    costs: { packCents: dollars(300), sellingCents: dollars(250), reconCents: dollars(650) },
    reconTemplates: demoReconTemplates(),
    undone: { chancePpm: 20_000, lostCents: dollars(400) },
    carrying: {
      floorPlan: {
        annualRatePpm: 86_250,
        dayCount: 'actual/360',
        advancePpm: 1_000_000,
        advanceCapCents: dollars(30_000),
        unitFeeCents: dollars(85),
        curtailments: [
          { day: 60, sharePpm: 100_000 },
          { day: 90, sharePpm: 100_000 },
        ],
      },
      cashAnnualRatePpm: 120_000,
      lotCentsPerDay: 350,
      daysToSell: { kind: 'median', days: 38 },
      horizonDays: 120,
    },
    stock: demoStock(today),
    rush: {
      weekly: [
        { weekday: 'fri', from: '16:00', to: '18:30' },
        { weekday: 'sat', from: '10:00', to: '13:00', who: 'the manager' },
        { weekday: 'sat', from: '13:00', to: '17:00', who: 'the salesperson' },
      ],
    },
    alerts: {},
  });
}
