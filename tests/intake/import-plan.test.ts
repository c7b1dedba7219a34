import { describe, expect, it } from 'vitest';
import { type LotFacts, type LotId, lotFactsSchema, lotIdSchema } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { countPlan, importPlan, type PlannedRow, rowPlanner } from '../../src/intake/import-plan.ts';
import { importResult } from '../../src/intake/import-result.ts';
import type { RowReading } from '../../src/intake/rows/row-reading.ts';
import { NOW } from './intake-context.ts';
import { processorSeconds } from './processor-time.ts';

const VIN = '1ZL3H4C21M0104471';
const id = (n: number): LotId => lotIdSchema.parse(String(n).padStart(26, '0'));
const facts = (given: object): LotFacts => lotFactsSchema.parse(given);
const closeAt = (text: string) => ({
  instant: Date.parse(text),
  text,
  zone: 'America/Boise',
  how: 'store-zone',
  doubts: [],
  otherwise: [],
});
const row = (number: number, given: object, usable = true): RowReading => ({
  row: number,
  facts: facts(given),
  evidence: {},
  faults: [],
  usable,
});
const watched = (n: number, given: object, more: Partial<LotState> = {}): LotState => ({
  id: id(n),
  facts: facts(given),
  evidence: {},
  source: 'page',
  addedAt: NOW,
  changedAt: NOW,
  dropped: false,
  bornIn: '00000000000000000000000000' as LotState['bornIn'],
  ...more,
});
const plan = (rows: readonly RowReading[], lots: readonly LotState[] = []): readonly PlannedRow[] =>
  rows.map(rowPlanner({ now: NOW, existing: (vin) => lots.filter((lot) => lot.facts.vin === vin) }));
const outline = (rows: readonly PlannedRow[]) => rows.map(({ action, seen }) => [action, seen?.kind ?? null]);

describe('a row of a car that is watched', () => {
  const lot = watched(1, {
    vin: VIN,
    priceNow: 900_000,
    retail: { likely: 1_800_000 },
    close: closeAt('2026-11-28T19:05Z'),
  });

  it('is put in doubt by a figure that could not be read only where none is known', () => {
    const next = { vin: VIN, close: closeAt('2026-11-28T19:05Z') };
    const doubt = (field: string) => ({ ...next, unread: [{ field, text: 'ask Lee' }] });
    expect(plan([row(2, doubt('retail'))], [lot])[0]).toMatchObject({ action: 'skip', seen: { changes: [] } });
    expect(plan([row(2, doubt('recon'))], [lot])[0]).toMatchObject({
      action: 'update',
      seen: { changes: [{ field: 'unread', taken: true }] },
    });
  });

  it('updates what the sale decides, and shows what it would not touch', () => {
    const next = {
      vin: VIN,
      priceNow: 950_000,
      retail: { likely: 1_700_000 },
      close: closeAt('2026-11-28T19:10Z'),
      miles: 5,
    };
    const [planned] = plan([row(2, next)], [lot]);
    expect(planned).toMatchObject({ action: 'update', seen: { kind: 'watched', lot: id(1) } });
    const changes = planned?.seen?.kind === 'watched' ? planned.seen.changes : [];
    expect(changes.map(({ field, taken }) => [field, taken])).toEqual([
      ['miles', true],
      ['close', true],
      ['priceNow', true],
      ['retail', false],
    ]);
  });

  it.each([
    ['a lower price, which an older list has', { priceNow: 850_000 }],
    ['another close of the same moment', { close: { ...closeAt('2026-11-28T19:05Z'), text: '2:05 PM ET' } }],
    ['nothing', {}],
  ])('changes nothing with %s', (_, next) =>
    expect(outline(plan([row(2, { vin: VIN, ...next })], [lot]))).toEqual([['skip', 'watched']]),
  );

  it('does not add notes that are there already', () => {
    const noted = watched(1, { vin: VIN, notes: 'One key\nLadder rack' });
    expect(outline(plan([row(2, { vin: VIN, notes: 'Ladder rack' })], [noted]))).toEqual([['skip', 'watched']]);
  });

  it.each([
    ['another venue', { venueId: 'saguaro' }, { venueId: 'saltmarsh' }],
    ['another venue by name', { venueName: 'Nowhere' }, { venueName: 'Elsewhere' }],
    ['another sale', { sale: 'Fleet Saturday' }, { sale: 'Fleet Monday' }],
    [
      'a close after one that has passed',
      { close: closeAt('2026-11-21T19:05Z') },
      { close: closeAt('2026-11-30T19:05Z') },
    ],
  ])('is a new lot of the same car with %s', (_, before, after) => {
    const planned = plan([row(2, { vin: VIN, ...after })], [watched(1, { vin: VIN, ...before })]);
    expect(outline(planned)).toEqual([['add', 'another-sale']]);
  });

  it.each([
    [
      'a close put off before it passed',
      { close: closeAt('2026-11-28T19:05Z') },
      { close: closeAt('2026-12-05T19:05Z') },
    ],
    ['the sale written otherwise', { sale: 'FLEET-SATURDAY' }, { sale: 'Fleet Saturday', miles: 5 }],
    [
      'a close extended by minutes after it passed',
      { close: closeAt('2026-11-26T15:58Z') },
      { close: closeAt('2026-11-26T16:03Z') },
    ],
  ])('is the same lot with %s', (_, before, after) => {
    const planned = plan([row(2, { vin: VIN, ...after })], [watched(1, { vin: VIN, ...before })]);
    expect(outline(planned)).toEqual([['update', 'watched']]);
  });

  it('prefers the lot of the same sale to a newer one of another', () => {
    const lots = [
      watched(1, { vin: VIN, venueId: 'saltmarsh' }),
      watched(2, { vin: VIN, venueId: 'saguaro' }, { addedAt: (NOW + 1) as LotState['addedAt'] }),
    ];
    expect(plan([row(2, { vin: VIN, venueId: 'saltmarsh' })], lots)[0]?.seen).toMatchObject({ lot: id(1) });
  });

  it('that was dropped is not brought back unasked', () => {
    expect(outline(plan([row(2, { vin: VIN, miles: 5 })], [watched(1, { vin: VIN }, { dropped: true })]))).toEqual([
      ['skip', 'watched'],
    ]);
  });
});

describe('two rows of one car', () => {
  it('make one lot, with what the second says later', () => {
    const planned = plan([row(2, { vin: VIN, priceNow: 900_000 }), row(3, { vin: VIN, priceNow: 950_000, miles: 5 })]);
    expect(outline(planned)).toEqual([
      ['add', null],
      ['update', 'in-file'],
    ]);
    const { add, change } = importResult(planned, 'file');
    expect(change).toEqual([]);
    expect(add).toEqual([
      {
        facts: { vin: VIN, priceNow: 950_000, miles: 5 },
        evidence: {
          miles: { from: 'file', text: '5', sure: 'certain' },
          priceNow: { from: 'file', text: '950000', sure: 'certain' },
        },
      },
    ]);
  });

  it('are two lots in two sales', () => {
    expect(outline(plan([row(2, { vin: VIN, sale: 'A' }), row(3, { vin: VIN, sale: 'B' })]))).toEqual([
      ['add', null],
      ['add', 'in-file-again'],
    ]);
  });

  it('can be taken as two lots all the same', () => {
    const chosen = plan([row(2, { vin: VIN }), row(3, { vin: VIN })]).map((one) => ({
      ...one,
      action: 'add' as const,
    }));
    expect(importResult(chosen, 'file').add).toHaveLength(2);
  });

  it('leave nothing behind when the first of them is skipped', () => {
    const [first, second] = plan([row(2, { vin: VIN }), row(3, { vin: VIN, miles: 5 })]);
    const chosen = [first && { ...first, action: 'skip' as const }, second].filter((one) => one !== undefined);
    expect(importResult(chosen, 'file')).toEqual({ add: [], change: [] });
  });

  it('do not take long when fifty thousand say that they are in different sales', () => {
    const start = processorSeconds();
    plan(Array.from({ length: 50_000 }, (_, i) => row(i, { vin: VIN, sale: `S${i}` })));
    expect(processorSeconds() - start).toBeLessThan(15);
  });
});

describe('an import', () => {
  const lot = watched(1, { vin: VIN, priceNow: 900_000, retail: { likely: 1_800_000 } });
  const rows = [
    row(2, { vin: VIN, priceNow: 950_000, retail: { likely: 1_700_000 } }),
    row(3, { make: 'Larkspur', close: closeAt('2026-11-25T19:05Z') }),
    row(4, {}, false),
  ];

  it('is counted before anything is done', async () => {
    async function* chunks() {
      yield rows.slice(0, 2);
      yield rows.slice(2);
    }
    const seen: number[] = [];
    const known = { now: NOW, existing: () => [lot] };
    const { counts, rows: planned } = await importPlan(chunks(), known, (n) => seen.push(n));
    expect(counts).toEqual({
      rows: 3,
      add: 1,
      update: 1,
      skip: 0,
      unusable: 1,
      totals: 0,
      repeated: 0,
      again: 0,
      seen: 1,
      withFaults: 0,
      closed: 1,
    });
    expect(seen).toEqual([2, 3]);
    const kept = planned.map((one) => (one.seen === null ? one : { ...one, action: 'skip' as const }));
    expect(countPlan(kept, NOW)).toMatchObject({ update: 0, skip: 1 });
  });

  it('writes only what the update takes, as coming from the file', () => {
    const { add, change } = importResult(plan(rows, [lot]), 'pasted');
    expect(change).toEqual([
      {
        id: id(1),
        set: { priceNow: 950_000 },
        evidence: { priceNow: { from: 'pasted', text: '950000', sure: 'certain' } },
      },
    ]);
    expect(add.map(({ facts: { make } }) => make)).toEqual(['Larkspur']);
  });
});
