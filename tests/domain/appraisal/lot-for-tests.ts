import { type LotFacts, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { type Worksheet, worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';

/** An invented dealer with one venue, a floor plan and two titles. */
export const SETUP: Setup = setupSectionsSchema.parse({
  store: { name: 'Cottonwood Truck & Van', zone: 'America/Boise' },
  venues: [
    {
      id: 'sagebrush',
      name: 'Sagebrush Fleet Sale',
      zone: 'America/Phoenix',
      feeScheduleIds: ['sagebrush'],
      increments: [{ fromCents: 0, stepCents: 2500 }],
      transport: { kind: 'flat', cents: 65_000 },
    },
  ],
  feeSchedules: [
    {
      id: 'sagebrush',
      name: 'Sagebrush',
      editions: [{ tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 30_000 }] }] }],
    },
  ],
  titles: [
    { id: 'clean', name: 'Clean' },
    { id: 'flood', name: 'Flood', keepsPpm: 700_000, floorable: false },
  ],
  rules: { dollarsCents: 150_000, lossChancePpm: 250_000 },
  costs: { packCents: 30_000 },
  undone: {},
  carrying: {
    floorPlan: { annualRatePpm: 85_000 },
    cashAnnualRatePpm: 120_000,
    lotCentsPerDay: 400,
    daysToSell: { kind: 'median', days: 40 },
  },
  rush: { weekly: [] },
  alerts: {},
});

/** An invented van with a guess at its retail. */
export const van = (over: object = {}): LotFacts =>
  lotFactsSchema.parse({
    year: 2020,
    miles: 60_000,
    venueId: 'sagebrush',
    retail: { low: 16_000_00, likely: 18_000_00, high: 20_000_00 },
    ...over,
  });

/** Its worksheet; the test fails where there is none. */
export function sheetOf(facts: LotFacts, setup: Setup = SETUP): Worksheet {
  const sheet = worksheetOf(facts, pricingContext(setup));
  if (!sheet.ok) throw new Error(sheet.message);
  return sheet.value;
}

export const comp = (price: number, over: object = {}) => ({
  kind: 'sold',
  price,
  miles: 60_000,
  year: 2020,
  ...over,
});
