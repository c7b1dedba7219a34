import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import { type LotId, lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { dealOf } from '../../src/domain/worksheet/deal-of.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { COLUMN_FIELDS, type ColumnFieldId } from '../../src/intake/columns/column-fields.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { ReadContext } from '../../src/intake/rows/read-context.ts';
import { readRow } from '../../src/intake/rows/read-row.ts';
import type { RowReading } from '../../src/intake/rows/row-reading.ts';
import { CONTEXT } from './intake-context.ts';

const VIN = '1ZL3H4C21M0104471';

/** Reads one row given by field; `lotNumber` identifies it unless the test says otherwise. */
function read(cells: Partial<Record<ColumnFieldId, string>>, context: Partial<ReadContext> = {}): RowReading {
  const all: Partial<Record<ColumnFieldId, string>> = { lotNumber: '7', ...cells };
  const ids = Object.keys(all) as ColumnFieldId[];
  const columns = ids.map((field, column) => ({ column, heading: field, field }));
  return readRow(
    ids.map((id) => all[id] ?? ''),
    columns,
    { ...CONTEXT, ...context },
  );
}
const facts = (cells: Partial<Record<ColumnFieldId, string>>, context: Partial<ReadContext> = {}) => {
  const { lotNumber, ...others } = read(cells, context).facts;
  return others;
};
const faults = (cells: Partial<Record<ColumnFieldId, string>>) =>
  read(cells).faults.map(({ heading, severity }) => [heading, severity]);

describe('a row', () => {
  it.each([
    [{ vin: ' 1zl3h4c2 1m-0104471 ' }, { vin: VIN }],
    [{ year: "'21" }, { year: 2021 }],
    [{ miles: '72k' }, { miles: 72_000 }],
    [{ kilometres: '116.000' }, { miles: 72_079 }],
    [{ priceNow: '$9,500' }, { priceNow: 950_000 }],
    [{ venue: 'SALTMARSH' }, { venueId: 'saltmarsh', venueName: 'SALTMARSH' }],
    [{ title: 'clean title' }, { titleId: 'clean' }],
    [{ funding: 'Floor plan' }, { funding: 'floor' }],
    [{ car: '2021 Larkspur Hauler 250 Crew' }, { year: 2021, make: 'Larkspur', model: 'Hauler 250 Crew' }],
    [{ car: 'Larkspur Hauler 2021' }, { year: 2021, make: 'Larkspur', model: 'Hauler' }],
    [
      { car: 'Larkspur Hauler', year: '2020' },
      { year: 2020, make: 'Larkspur', model: 'Hauler' },
    ],
    [
      { retailLow: '16k', retailLikely: '18k', retailHigh: '20k' },
      { retail: { low: 1_600_000, likely: 1_800_000, high: 2_000_000 } },
    ],
    [{ reconLikely: '900' }, { recon: [{ label: 'Recon', amount: { likely: 90_000 }, chance: 1_000_000 }] }],
    [{ pageUrl: 'https://saguaro-flats.example/lot/7' }, { pageUrl: 'https://saguaro-flats.example/lot/7' }],
    [{ make: 'Larkspur\n Works' }, { make: 'Larkspur Works' }],
    [{ trim: "'-1" }, { trim: '-1' }],
    [{ make: 'n/a', model: '-', trim: '—', priceNow: 'TBD', miles: '' }, {}],
  ] as const)('with %j is %j', (cells, expected) => {
    expect(facts(cells)).toEqual(expected);
    expect(read(cells).faults).toEqual([]);
    expect(lotFactsSchema.safeParse(read(cells).facts).success).toBe(true);
  });

  it('reads the example of every field in the table of fields', () => {
    // Some columns only make sense beside others.
    const beside: Partial<Record<ColumnFieldId, Partial<Record<ColumnFieldId, string>>>> = {
      closeDate: { closeTime: '2:05 PM' },
      closeTime: { closeDate: '11/28/2026' },
      zone: { closeDate: '11/28/2026', closeTime: '2:05 PM' },
      retailLow: { retailLikely: '18,000' },
      retailHigh: { retailLikely: '18,000' },
      reconLow: { reconLikely: '900' },
      reconHigh: { reconLikely: '900' },
    };
    for (const { id, example, fills } of COLUMN_FIELDS.filter((field) => field.id !== 'more')) {
      // With a venue, a close that names no zone is in no doubt.
      const reading = read({ venue: 'Saltmarsh', ...beside[id], [id]: example });
      expect([id, reading.faults]).toEqual([id, []]);
      expect(fills.every((field) => reading.facts[field] !== undefined)).toBe(true);
    }
  });

  it('keeps the text of a cell that can’t be read in the notes, and the rest of the row', () => {
    const reading = read({ vin: VIN, miles: 'TMU', priceNow: '3.456', notes: 'One key' });
    expect(reading).toMatchObject({
      usable: true,
      facts: { vin: VIN, notes: 'One key\nmiles: TMU\npriceNow: 3.456' },
      faults: [
        { column: 2, heading: 'miles', text: 'TMU', severity: 'unread' },
        { column: 3, heading: 'priceNow', text: '3.456', severity: 'unread' },
      ],
    });
    expect(reading.facts.miles).toBeUndefined();
  });

  it.each([
    [{ vin: '1ZL3H4C20M0104471' }, [['vin', 'question']]],
    [{ vin: '1ZL3H4C' }, [['vin', 'unread']]],
    [{ vin: '1.11E+16' }, [['vin', 'unread']]],
    [{ venue: 'Nowhere' }, [['venue', 'question']]],
    [{ title: 'odd' }, [['title', 'unread']]],
    [{ priceNow: '-5' }, [['priceNow', 'unread']]],
    [{ increment: '0' }, [['increment', 'unread']]],
    [{ funding: 'loan' }, [['funding', 'unread']]],
    [{ pageUrl: 'javascript:alert(1)' }, [['pageUrl', 'unread']]],
    [{ closes: 'soon' }, [['closes', 'unread']]],
    [{ retailLow: '20k', retailLikely: '18k' }, [['retailLow', 'unread']]],
    [{ retailHigh: '20k' }, [['retailHigh', 'unread']]],
    [{ retailLow: '16k', retailHigh: '20k' }, [['retailLow', 'question']]],
    [
      { retailLow: '20k', retailHigh: '16k' },
      [
        ['retailLow', 'unread'],
        ['retailHigh', 'unread'],
      ],
    ],
    [{ make: 'x'.repeat(300) }, [['make', 'question']]],
  ])('with %j is told about', (cells, expected) => expect(faults(cells)).toEqual(expected));

  it('that names no lot can’t be added, and is shown whole', () => {
    const reading = read({ lotNumber: '', vin: '123', miles: '45,210' });
    expect(reading.usable).toBe(false);
    expect(reading.faults.at(-1)).toMatchObject({ column: null, severity: 'row', text: '123 | 45,210' });
  });

  it('with more cells than headings is doubted, and loses none of them', () => {
    const columns = [{ column: 0, heading: 'VIN', field: 'vin' as const }];
    const reading = readRow([VIN, '9', '500', ''], columns, CONTEXT);
    expect(reading.facts.notes).toBe('Beyond the last heading: 9 | 500');
    expect(reading.faults).toMatchObject([{ column: null, severity: 'question', text: '9 | 500' }]);
  });

  it('keeps long text that does not fit its field in the notes', () => {
    const { make, notes } = read({ make: 'x'.repeat(300) }).facts;
    expect(make).toHaveLength(200);
    expect(notes).toBe(`make: ${'x'.repeat(300)}`);
  });

  it('says when its notes are too long to keep whole', () => {
    const reading = read({ notes: '😀'.repeat(3000) });
    expect(reading.facts.notes?.length).toBeLessThanOrEqual(4000);
    expect(reading.faults[0]?.message).toContain('6,000 characters');
    expect(lotFactsSchema.safeParse(reading.facts).success).toBe(true);
  });

  it('shows where a value came from unless its cell was the value itself', () => {
    const { evidence } = read({ make: 'Larkspur', miles: '72k', priceNow: '9500', vin: '1ZL3H4C20M0104471' });
    expect(evidence).toEqual({
      miles: { from: 'file', text: '72k', sure: 'certain' },
      vin: { from: 'file', text: '1ZL3H4C20M0104471', sure: 'doubtful' },
    });
  });

  it('reads a decimal comma where the file has them', () => {
    expect(facts({ priceNow: '9.500,50', miles: '45.210' }, { decimal: ',' })).toEqual({
      priceNow: 950_050,
      miles: 45_210,
    });
  });
});

describe('the close of a row', () => {
  const close = (cells: Partial<Record<ColumnFieldId, string>>) => {
    const found = read(cells).facts.close;
    return found && [new Date(found.instant).toISOString().slice(0, 16), found.zone, found.text];
  };

  it('is read in the venue’s zone, else in the store’s', () => {
    expect(close({ closes: '11/28/2026 2:05 PM', venue: 'Saltmarsh' })).toEqual([
      '2026-11-28T19:05',
      'America/New_York',
      '11/28/2026 2:05 PM',
    ]);
    expect(close({ closes: '11/28/2026 2:05 PM' })).toEqual([
      '2026-11-28T21:05',
      'America/Boise',
      '11/28/2026 2:05 PM',
    ]);
  });

  it('is put together from date, time and zone', () => {
    expect(close({ closeDate: '11/28/2026', closeTime: '2:05 PM', zone: 'ET' })?.[0]).toBe('2026-11-28T19:05');
    expect(close({ closeDate: '11/28/2026', closeTime: '2:05 PM', zone: 'America/Chicago' })).toEqual([
      '2026-11-28T20:05',
      'America/Chicago',
      '11/28/2026 2:05 PM',
    ]);
  });

  it('is read from what spreadsheets make of dates and times', () => {
    // 2026-11-28 is day 46354 of the spreadsheets' count, 14:05 is 0.586806 of a day (computed independently).
    expect(close({ closes: '46354.586806', venue: 'Saltmarsh' })?.[0]).toBe('2026-11-28T19:05');
    expect(close({ closeDate: '46354', closeTime: '0.586806', zone: 'ET' })?.[0]).toBe('2026-11-28T19:05');
    expect(close({ closeDate: '11/28/2026 0:00', closeTime: '12/30/1899 14:05', zone: 'ET' })?.[0]).toBe(
      '2026-11-28T19:05',
    );
  });

  it('takes zone letters from the heading when the cell has none', () => {
    const columns = [
      { column: 0, heading: 'Lot', field: 'lotNumber' as const },
      { column: 1, heading: 'Ends (ET)', field: 'closes' as const },
    ];
    const at = (text: string) => readRow(['7', text], columns, CONTEXT).facts.close?.zone;
    expect(at('11/28/2026 2:05 PM')).toBe('America/New_York');
    expect(at('11/28/2026 2:05 PM MT')).toBe('America/Denver');
  });

  it('that could mean two moments is a question, and a UTC column settles it', () => {
    const cells = { closes: '2026-11-01 1:30 AM', zone: 'America/New_York' };
    expect(faults(cells)).toEqual([['closes', 'question']]);
    expect(read(cells).facts.close).toMatchObject({ doubts: ['overlap'] });
    const settled = read({ ...cells, closesUtc: '2026-11-01T06:30:00Z' });
    expect(settled.faults).toEqual([]);
    expect(settled.facts.close).toMatchObject({ instant: Date.parse('2026-11-01T06:30Z'), how: 'picked', doubts: [] });
  });

  it('is the local one when the UTC column contradicts it, with a question', () => {
    const cells = { closes: '2026-11-28 14:05', zone: 'America/New_York', closesUtc: '2026-11-28 14:05' };
    expect(close(cells)?.[0]).toBe('2026-11-28T19:05');
    expect(faults(cells)).toEqual([['closes', 'question']]);
  });

  it('can be given in UTC alone', () => {
    expect(close({ closesUtc: '2026-11-28 19:05', venue: 'Saltmarsh' })).toEqual([
      '2026-11-28T19:05',
      'America/New_York',
      '2026-11-28 19:05',
    ]);
    expect(faults({ closesUtc: '28.11.' })).toEqual([['closesUtc', 'unread']]);
  });
});

describe('a run list', () => {
  it('is read with all that is wrong with it', async () => {
    const table = openTable(readFileSync('tests/fixtures/csv/run-list.csv', 'utf8'));
    if (!table.ok) throw new Error(table.message);
    const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
    expect(columns.every(({ sure, field }) => sure === 'certain' && field !== null)).toBe(true);
    const rows: RowReading[] = [];
    for await (const chunk of readInChunks(table.value, columns, CONTEXT)) rows.push(...chunk);
    expect(rows.map(({ row, usable, faults }) => [row, usable, faults.map(({ heading }) => heading)])).toEqual([
      [4, true, []],
      [5, true, ['Odometer', 'Title Status']],
      [6, true, ['Auction', 'Ends (ET)']],
      [7, false, []],
    ]);
    expect(rows[0]?.facts).toMatchObject({
      vin: VIN,
      miles: 45_210,
      venueId: 'saltmarsh',
      titleId: 'clean',
      priceNow: 950_000,
    });
    expect(rows[1]?.facts).toMatchObject({ vin: VIN, year: 2021, titleId: 'Rebuilt?', notes: 'Odometer: TMU' });
    expect(rows[2]?.facts).toMatchObject({ miles: 72_000, venueName: 'Somewhere', notes: 'Ends (ET): soon ET' });
  });
});

describe('a title that the setup does not know', () => {
  it('is kept as it is written, so that the car is never priced as if its title were clean', () => {
    const reading = read({ title: 'Storm damage', retailLikely: '18000' });
    expect(reading.facts.titleId).toBe('Storm damage');
    expect(reading.evidence.titleId?.sure).toBe('doubtful');
    expect(reading.faults).toMatchObject([{ heading: 'title', severity: 'unread' }]);
    const setup = demoScenario(instant(Date.UTC(2026, 10, 25, 18)), () => '' as LotId).setup;
    const deal = dealOf({ ...reading.facts, venueId: 'caliche' }, pricingContext(setup));
    expect(deal).toMatchObject({ ok: false, problems: [{ reason: 'unknown-title' }] });
  });
});
