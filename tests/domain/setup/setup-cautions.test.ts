import { describe, expect, test } from 'vitest';
import { setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { setupCautions } from '../../../src/domain/setup/setup-cautions.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';

const edition = (validFrom?: string, validTo?: string) => ({
  ...(validFrom && { validFrom }),
  ...(validTo && { validTo }),
  tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 10_000 }] }],
});
const venue = (over: object = {}) => ({
  id: 'v',
  name: 'Riverbend',
  zone: 'America/Phoenix',
  feeScheduleIds: ['f'],
  increments: [{ fromCents: 0, stepCents: 5000 }],
  transport: { kind: 'flat', cents: 40_000 },
  ...over,
});
const messages = (venues: object[], editions: object[] = [edition()]) =>
  setupCautions(
    setupSectionsSchema.parse({
      ...startingSetup(zone('America/Boise')),
      venues,
      feeSchedules: [{ id: 'f', name: 'Riverbend fees', editions }],
    }),
  ).map((caution) => caution.message);

describe('a setup that is allowed and probably not meant', () => {
  test('nothing is said of a sound one', () => {
    expect(messages([venue()])).toEqual([]);
  });

  test('a venue without fees, with unknown fees, or without transport is named, unless the dealer said that it costs nothing', () => {
    expect(messages([venue({ feeScheduleIds: [] })])).toEqual([expect.stringMatching(/No buy fees yet/)]);
    expect(messages([venue({ feeScheduleIds: ['gone'] })])).toEqual([expect.stringMatching(/“gone”, which is not/)]);
    expect(messages([venue({ transport: { kind: 'flat', cents: 0 } })])).toEqual([
      expect.stringMatching(/No transport yet/),
    ]);
    expect(
      messages([venue({ transport: { kind: 'per-mile', miles: 0, centsPerMile: 90, minimumCents: 30_000 } })]),
    ).toEqual([expect.stringMatching(/comes to \$300/)]);
  });

  test('a venue that charges nothing because the dealer said so is no oddity', () => {
    const free = { feeScheduleIds: [], noBuyFees: true, noTransport: true, transport: { kind: 'flat', cents: 0 } };
    expect(messages([venue(free)])).toEqual([]);
  });

  test('editions that follow one another are in order, whichever stands first', () => {
    expect(messages([], [edition('2026-03-01'), edition('2026-01-01', '2026-02-28')])).toEqual([]);
  });

  test('editions that overlap are named with the day, also across one in between', () => {
    expect(messages([], [edition('2026-01-01'), edition('2026-03-01')])).toEqual([
      expect.stringMatching(/apply on 2026-03-01/),
    ]);
    expect(messages([], [edition('2026-01-01', '2026-03-01'), edition('2026-03-01')])).toHaveLength(1);
    const across = [edition('2026-01-01', '2026-12-31'), edition('2026-02-01', '2026-02-02'), edition('2026-03-01')];
    expect(messages([], across)).toHaveLength(1);
    expect(messages([], [edition(), edition()])).toEqual([expect.stringMatching(/apply on the same days/)]);
  });

  test('an edition that costs nothing is named', () => {
    expect(messages([], [{ tables: [], charges: [] }])).toEqual([expect.stringMatching(/come to \$0/)]);
  });
});
