import { describe, expect, test } from 'vitest';
import { setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { setupChanges } from '../../../src/domain/setup/setup-changes.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const venue = (id: string, name: string, cents = 40_000) => ({
  id,
  name,
  zone: 'America/Phoenix',
  feeScheduleIds: [],
  increments: [{ fromCents: 0, stepCents: 5000 }],
  transport: { kind: 'flat', cents },
});
const setup = (over: object) => setupSectionsSchema.parse({ ...startingSetup(zone('America/Boise')), ...over });

const { rules } = startingSetup(zone('America/Boise'));

describe('what a loaded setup would change', () => {
  test('is nothing where both are alike', () => {
    expect(setupChanges(setup({}), setup({}))).toEqual([]);
  });

  test('is told value by value, in the units of the screen', () => {
    const changes = setupChanges(
      setup({}),
      setup({ rules: { ...rules, dollarsCents: 200_000 }, costs: { packCents: 12_345 } }),
    );
    expect(changes).toEqual([
      { section: 'rules', place: 'Money rules › minimum profit', what: 'changed', before: '$1,500', after: '$2,000' },
      { section: 'costs', place: 'Costs › pack', what: 'changed', before: '$0', after: '$123.45' },
    ]);
  });

  test('pairs venues by their id, so that a move in the list is no change', () => {
    const before = setup({ venues: [venue('a', 'Riverbend'), venue('b', 'Two Forks')] });
    expect(setupChanges(before, setup({ venues: [venue('b', 'Two Forks'), venue('a', 'Riverbend')] }))).toEqual([]);
    expect(setupChanges(before, setup({ venues: [venue('b', 'Two Forks', 50_000), venue('c', 'Saltgrass')] }))).toEqual(
      [
        {
          section: 'venues',
          place: 'Venues › Two Forks › transport › amount',
          what: 'changed',
          before: '$400',
          after: '$500',
        },
        { section: 'venues', place: 'Venues › Saltgrass', what: 'new' },
        { section: 'venues', place: 'Venues › Riverbend', what: 'gone' },
      ],
    );
  });

  test('tells busy hours, dates and calls as a person would', () => {
    const before = setup({
      rush: {
        weekly: [{ weekday: 'sat', from: '10:00', to: '17:00' }],
        exceptions: [{ date: '2026-11-26', hours: [] }],
      },
    });
    const after = setup({
      rush: {
        weekly: [
          { weekday: 'fri', from: '16:00', to: '18:00' },
          { weekday: 'sat', from: '10:00', to: '17:00' },
        ],
        exceptions: [{ date: '2026-11-26', note: 'Holiday', hours: [] }],
      },
      alerts: { leadMinutes: [30] },
    });
    expect(setupChanges(before, after)).toEqual([
      { section: 'rush', place: 'Busy hours › Friday from 16:00', what: 'new' },
      {
        section: 'rush',
        place: 'Busy hours › 2026-11-26 › note',
        what: 'changed',
        before: 'nothing',
        after: '“Holiday”',
      },
      {
        section: 'alerts',
        place: 'Reminders › reminders before a close',
        what: 'changed',
        before: '30, 10',
        after: '30',
      },
    ]);
  });

  test('names the fees of a venue by their name, not by their id', () => {
    const feeSchedules = [{ id: 'f1', name: 'Riverbend fees', editions: [{ tables: [] }] }];
    const before = setup({ feeSchedules, venues: [venue('a', 'Riverbend')] });
    const after = setup({ feeSchedules, venues: [{ ...venue('a', 'Riverbend'), feeScheduleIds: ['f1'] }] });
    expect(setupChanges(before, after)).toEqual([
      { section: 'venues', place: 'Venues › Riverbend › the fees Riverbend fees', what: 'new' },
    ]);
    expect(setupChanges(after, before)).toEqual([
      { section: 'venues', place: 'Venues › Riverbend › the fees Riverbend fees', what: 'gone' },
    ]);
  });

  test('names a floor plan that comes or goes', () => {
    const carrying = { daysToSell: { kind: 'median', days: 40 }, cashAnnualRatePpm: 100_000 };
    const floored = setup({ carrying: { ...carrying, floorPlan: { annualRatePpm: 90_000 } } });
    expect(setupChanges(setup({ carrying }), floored)).toEqual([
      { section: 'carrying', place: 'Holding › floor plan', what: 'new' },
    ]);
  });
});
