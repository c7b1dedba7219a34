import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';

/** A small invented setup; sections given take the place of its own. */
export function inventedSetup(over: Partial<Record<keyof Setup, unknown>> = {}): Setup {
  return setupSectionsSchema.parse({
    store: { name: 'Cottonwood Truck & Van', zone: 'America/Boise' },
    venues: [
      {
        id: 'ocotillo',
        name: 'Ocotillo Truck Sale',
        zone: 'America/Phoenix',
        feeScheduleIds: ['ocotillo-buyer'],
        increments: [
          { fromCents: 0, stepCents: 2500 },
          { fromCents: 1_000_000, stepCents: 5000 },
        ],
        transport: { kind: 'per-mile', miles: 1000, centsPerMile: 90, minimumCents: 25_000 },
      },
      {
        id: 'no-fees',
        name: 'Quiet Barn',
        zone: 'America/New_York',
        feeScheduleIds: [],
        noBuyFees: true,
        increments: [{ fromCents: 0, stepCents: 10_000 }],
        transport: { kind: 'flat', cents: 40_000 },
      },
    ],
    feeSchedules: [
      {
        id: 'ocotillo-buyer',
        name: 'Ocotillo buyer fees',
        editions: [
          {
            validTo: '2025-11-30',
            tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 20_000 }] }],
            charges: [{ label: 'Gate pass', cents: 5000 }],
          },
          {
            validFrom: '2025-12-01',
            tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 30_000 }] }],
            charges: [{ label: 'Gate pass', cents: 5000 }],
          },
        ],
      },
    ],
    titles: [
      { id: 'clean', name: 'Clean' },
      { id: 'rebuilt', name: 'Rebuilt', keepsPpm: 800_000, floorable: false },
    ],
    rules: { dollarsCents: 150_000, perCashDayPpm: 1000 },
    costs: { packCents: 30_000, overheadCents: 10_000, sellingCents: 20_000, reconCents: 60_000 },
    undone: { chancePpm: 20_000, lostCents: 40_000, lostRatePpm: 5000 },
    carrying: {
      floorPlan: { annualRatePpm: 73_000, advancePpm: 900_000, advanceCapCents: 2_000_000, unitFeeCents: 7500 },
      cashAnnualRatePpm: 109_500,
      lotCentsPerDay: 300,
      daysToSell: { kind: 'fixed', days: 40 },
    },
    rush: { weekly: [] },
    alerts: {},
    ...over,
  });
}
