import type { FeeSchedule } from '../domain/fees/fee-schedule.ts';
import { feeScheduleSchema } from '../domain/fees/fee-schedule.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { LocalDate } from '../domain/time/local-date.ts';

const flat = (fromDollars: number, dollars: number) => ({ fromCents: fromDollars * 100, flatCents: dollars * 100 });
const share = (fromDollars: number, percent: number, limits: { least?: number; most?: number } = {}) => ({
  fromCents: fromDollars * 100,
  ratePpm: percent * 10_000,
  ...(limits.least === undefined ? {} : { minimumCents: limits.least * 100 }),
  ...(limits.most === undefined ? {} : { maximumCents: limits.most * 100 }),
});
const charge = (label: string, dollars: number) => ({ label, cents: dollars * 100 });

/**
 * Invented fee schedules of different kinds: plain steps; a percentage with a minimum and a maximum; a percentage that turns
 * into a flat fee and so falls at an edge; and one with higher rates to come.
 * @param today the date in the store's zone
 */
export function demoFees(today: LocalDate): FeeSchedule[] {
  const dearerFrom = addDays(today, 30);
  const steps = [
    flat(0, 150),
    flat(1000, 225),
    flat(2500, 300),
    flat(5000, 375),
    flat(8000, 450),
    flat(12_000, 525),
    flat(20_000, 650),
  ];
  return [
    {
      id: 'saguaro-buy',
      name: 'Saguaro buyer fees',
      editions: [
        {
          validTo: addDays(dearerFrom, -1),
          tables: [{ label: 'Buy fee', bands: steps }],
          charges: [charge('Gate pass', 45)],
        },
        {
          validFrom: dearerFrom,
          tables: [{ label: 'Buy fee', bands: steps.map((band) => ({ ...band, flatCents: band.flatCents + 2500 })) }],
          charges: [charge('Gate pass', 55)],
        },
      ],
    },
    {
      id: 'saltmarsh-buy',
      name: 'Saltmarsh buyer fees',
      editions: [
        {
          tables: [
            { label: 'Buy fee', bands: [share(0, 4.25, { least: 200, most: 725 })] },
            { label: 'Online fee', bands: [flat(0, 60), flat(6000, 95), flat(12_000, 130)] },
          ],
          charges: [charge('Papers', 75)],
        },
      ],
    },
    {
      id: 'caliche-buy',
      name: 'Caliche Flats buyer fees',
      editions: [
        {
          tables: [
            {
              label: 'Buy fee',
              bands: [flat(0, 100), flat(1000, 200), share(5000, 8), flat(10_000, 450), flat(15_000, 600)],
            },
            { label: 'Online fee', bands: [flat(0, 50), flat(5000, 99), flat(10_000, 129)] },
          ],
          charges: [charge('Papers', 79)],
        },
      ],
    },
    {
      id: 'fogline-buy',
      name: 'Fogline buyer fees',
      editions: [
        {
          tables: [{ label: 'Buy fee', bands: [flat(0, 250), share(4000, 5.5), share(15_000, 5, { most: 950 })] }],
          charges: [],
        },
      ],
    },
  ].map((schedule) => feeScheduleSchema.parse(schedule));
}
