import { describe, expect, test } from 'vitest';
import { setupFileSchema } from '../../../src/domain/setup/setup.ts';
import { faultSentence, setupFaults } from '../../../src/domain/setup/setup-faults.ts';

/** A setup file with everything in it that a fault can be about. */
const file = () => ({
  format: 'headroom-setup',
  version: 1,
  store: { name: 'Cottonwood Truck & Van', zone: 'America/Boise' },
  venues: [
    {
      id: 'riverbend',
      name: 'Riverbend',
      zone: 'America/Phoenix',
      feeScheduleIds: ['riverbend-fees'],
      increments: [{ fromCents: 0, stepCents: 5000 }],
      transport: { kind: 'flat', cents: 40_000 },
    },
  ],
  feeSchedules: [
    {
      id: 'riverbend-fees',
      name: 'Riverbend fees',
      editions: [
        {
          validFrom: '2026-01-01',
          tables: [
            {
              label: 'Buy fee',
              bands: [
                { fromCents: 0, flatCents: 10_000 },
                { fromCents: 100_000, flatCents: 20_000 },
                { fromCents: 200_000, ratePpm: 20_000, minimumCents: 100, maximumCents: 200 },
              ],
            },
          ],
          charges: [{ label: 'Gate pass', cents: 500 }],
        },
      ],
    },
  ],
  titles: [{ id: 'clean', name: 'Clean' }],
  rules: { dollarsCents: 150_000 },
  costs: {},
  undone: {},
  carrying: {
    daysToSell: { kind: 'median', days: 40 },
    floorPlan: { annualRatePpm: 90_000, curtailments: [{ day: 60, sharePpm: 600_000 }] },
  },
  rush: { weekly: [{ weekday: 'sat', from: '10:00', to: '17:00' }] },
  alerts: { leadMinutes: [60, 15] },
});

/** The sentences for a sound file in which one thing was changed. */
function faultsWith(path: string, value: unknown): readonly string[] {
  const spoiled = file();
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  Reflect.set(Object(keys.reduce<unknown>((part, key) => Reflect.get(Object(part), key), spoiled)), last, value);
  const result = setupFileSchema.safeParse(spoiled);
  return result.success ? [] : setupFaults(result.error.issues, spoiled).map(faultSentence);
}

const riverbend = file().venues[0];

describe('a fault in a setup file', () => {
  test('a sound file has none', () => {
    expect(setupFileSchema.safeParse(file()).error).toBeUndefined();
  });

  test.each<[string, string, unknown, string]>([
    [
      'a first band above nothing',
      'feeSchedules.0.editions.0.tables.0.bands.0.fromCents',
      100,
      'Buy fees › Riverbend fees › Buy fee › band 1: starts at $1. The first band must start at $0, or no fee is known below it.',
    ],
    [
      'a band below the one before it',
      'feeSchedules.0.editions.0.tables.0.bands.2.fromCents',
      90_000,
      'Buy fees › Riverbend fees › Buy fee › band 3: starts at $900, below the $1,000 of the band before it. Raise it, or put the bands in order.',
    ],
    [
      'bands that start alike',
      'feeSchedules.0.editions.0.tables.0.bands.1.fromCents',
      200_000,
      'Buy fees › Riverbend fees › Buy fee › band 3: starts at $2,000, like the band before it. Give one of them another start, or remove it.',
    ],
    [
      'limits that cross',
      'feeSchedules.0.editions.0.tables.0.bands.2.minimumCents',
      300,
      'Buy fees › Riverbend fees › Buy fee › band 3: the minimum of $3 is above the maximum of $2. Lower the one or raise the other.',
    ],
    [
      'an edition that ends before it starts',
      'feeSchedules.0.editions.0.validTo',
      '2025-02-01',
      'Buy fees › Riverbend fees: ends on 2025-02-01, before it starts on 2026-01-01. Move one of the two dates.',
    ],
    [
      'a date that is none',
      'feeSchedules.0.editions.0.validFrom',
      '3/1/2026',
      'Buy fees › Riverbend fees › valid from: must be a date such as 2026-03-01.',
    ],
    [
      'an increment out of order',
      'venues.0.increments.1',
      { fromCents: 0, stepCents: 100 },
      'Venues › Riverbend › bid increment 2: starts at $0, like the bid increment before it. Give one of them another start, or remove it.',
    ],
    [
      'an id that stands twice',
      'venues.1',
      { ...riverbend, name: 'Two Forks' },
      'Venues › Two Forks: another entry already has the id “riverbend”. Give this one its own id.',
    ],
    [
      'a zone that is none',
      'store.zone',
      'MST',
      'Store › time zone: “MST” is not a time zone known here. Write one such as America/Denver.',
    ],
    [
      'curtailments beyond the whole',
      'carrying.floorPlan.curtailments.1',
      { day: 90, sharePpm: 500_000 },
      'Holding › floor plan › curtailment 2: with this one, 110% of the advance is paid back, which is more than all of it. Lower a share.',
    ],
    [
      'curtailments out of order',
      'carrying.floorPlan.curtailments.1',
      { day: 30, sharePpm: 100_000 },
      'Holding › floor plan › curtailment 2: day 30 does not come after day 60 of the one before it. Put the days in order.',
    ],
    [
      'busy hours that end first',
      'rush.weekly.0.to',
      '09:00',
      'Busy hours › Saturday from 10:00: ends at 09:00, which is not after 10:00. Make the end later; hours past midnight go on the next day.',
    ],
    [
      'a time that is none',
      'rush.weekly.0.to',
      '5 pm',
      'Busy hours › Saturday from 10:00 › to: must be a time of day on a 24-hour clock, such as 09:30.',
    ],
    [
      'calls out of order',
      'alerts.leadMinutes.2',
      30,
      'Reminders › reminders before a close › reminder 3: 30 minutes before the close is not later than 15 minutes before it. Put the reminders in order, from the earliest to the last.',
    ],
    ['no call at all', 'alerts.leadMinutes', [], 'Reminders › reminders before a close: add at least one.'],
    [
      'a call days ahead',
      'alerts.leadMinutes.0',
      4000,
      'Reminders › reminders before a close › reminder 1: must be at most 1,440 minutes.',
    ],
    [
      'dollars where cents belong',
      'rules.dollarsCents',
      1500.5,
      'Money rules › minimum profit: must be a whole number of cents, such as 12345 for $123.45.',
    ],
    ['an amount below nothing', 'rules.dollarsCents', -100, 'Money rules › minimum profit: must be at least $0.'],
    [
      'a share above the whole',
      'rules.lossChancePpm',
      1_500_000,
      'Money rules › highest chance of a loss: must be at most 100%.',
    ],
    [
      'a misspelt key',
      'costs.packDollars',
      100,
      'Costs › pack dollars: this field is not known. Check its spelling, or remove it.',
    ],
    ['a section that is missing', 'rush', undefined, 'Busy hours: this is missing. Add it.'],
    [
      'a section that is unknown',
      'colours',
      {},
      '“colours”: this field is not known. Check its spelling, or remove it.',
    ],
    [
      'a kind that is unknown',
      'venues.0.transport.kind',
      'train',
      'Venues › Riverbend › transport › kind: must be “flat” or “per-mile”.',
    ],
    [
      'a word that is unknown',
      'carrying.floorPlan.dayCount',
      '360',
      'Holding › floor plan › day count: must be “actual/365”, “actual/360”, “30/360”, “30E/360”, “30E/360 ISDA” or “actual/actual”.',
    ],
    [
      'a word where a switch belongs',
      'titles.0.floorable',
      'yes',
      'Titles › Clean › can be floor-planned: must be true or false.',
    ],
    ['a number where a name belongs', 'store.name', 7, 'Store › name: must be text in quotes.'],
    ['a name that is too long', 'store.name', 'x'.repeat(90), 'Store › name: at most 80 characters. Shorten it.'],
    ['no edition', 'feeSchedules.0.editions', [], 'Buy fees › Riverbend fees › editions: add at least one.'],
  ])('%s is told with its place and what to do', (_, path, value, sentence) => {
    expect(faultsWith(path, value)).toEqual([sentence]);
  });

  test('two editions are told apart by their dates', () => {
    const later = { validFrom: '2026-04-01', tables: [], charges: [{ label: '', cents: 1 }] };
    expect(faultsWith('feeSchedules.0.editions.1', later)).toEqual([
      'Buy fees › Riverbend fees › rates from 2026-04-01 › charge 1 › label: this is required.',
    ]);
  });

  test('a table without a label is told by its position, and each fault is told once', () => {
    const bands = [{ fromCents: 100 }, { fromCents: 50 }];
    expect(faultsWith('feeSchedules.0.editions.0.tables.0', { label: '', bands })).toEqual([
      'Buy fees › Riverbend fees › first table › label: this is required.',
      'Buy fees › Riverbend fees › first table › band 1: starts at $1. The first band must start at $0, or no fee is known below it.',
    ]);
  });
});
