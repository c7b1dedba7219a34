import { parse as parseElsewhere } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LotFacts, lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { csvRow } from '../../src/intake/csv/csv-row.ts';
import { sniffDialect } from '../../src/intake/csv/dialect.ts';
import { guardCell, unguardCell } from '../../src/intake/csv/guard-cell.ts';
import { readRecords } from '../../src/intake/csv/records.ts';
import { lotsToCsv } from '../../src/intake/lots-to-csv.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import { arbitraryFacts } from './arbitrary-facts.ts';
import { CONTEXT } from './intake-context.ts';

const write = (lots: readonly LotFacts[]) =>
  [
    ...lotsToCsv(
      lots.map((facts) => ({ facts })),
      CONTEXT,
    ),
  ].join('');
const lot = (facts: object): LotFacts => lotFactsSchema.parse(facts);

async function readBack(text: string): Promise<readonly LotFacts[]> {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
  const facts: LotFacts[] = [];
  for await (const chunk of readInChunks(table.value, columns, CONTEXT)) facts.push(...chunk.map((row) => row.facts));
  return facts;
}
const cellsOf = (facts: LotFacts): Record<string, string> =>
  (parseElsewhere(write([facts]), { bom: true, columns: true }) as Record<string, string>[])[0] ?? {};

const LARKSPUR = lot({
  vin: '1ZL3H4C21M0104471',
  year: 2021,
  make: 'Larkspur',
  miles: 45_210,
  venueId: 'saltmarsh',
  venueName: 'Saltmarsh Fleet',
  close: {
    instant: Date.parse('2026-11-28T19:05Z'),
    text: 'Sat 2:05p',
    zone: 'America/New_York',
    how: 'venue-zone',
    doubts: [],
    otherwise: [],
  },
  priceNow: 950_000,
  retail: { low: 1_650_000, likely: 1_800_000, high: 1_980_050 },
  recon: [
    { label: 'Tires', amount: { likely: 60_000 } },
    { label: 'Door', amount: { likely: 100_000 }, chance: 500_000 },
  ],
  titleId: 'clean',
});

describe('lots in a CSV file', () => {
  it('come back as the very same facts', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(arbitraryFacts, { minLength: 1, maxLength: 4 }), async (lots) => {
        // A lot of which nothing is known leaves a blank row, and a blank row is no lot.
        const known = lots.map((facts) => ({ ...facts, lotNumber: facts.lotNumber ?? 'A1' }));
        expect(await readBack(write(known))).toEqual(known);
      }),
      { numRuns: 200 },
    );
  });

  it('are read by another parser as they were meant', () => {
    expect(cellsOf(LARKSPUR)).toMatchObject({
      VIN: '1ZL3H4C21M0104471',
      Year: '2021',
      Miles: '45210',
      Venue: 'Saltmarsh Fleet',
      Closes: '2026-11-28 14:05',
      Zone: 'America/New_York',
      'Closes (UTC)': '2026-11-28T19:05:00Z',
      'Price now': '9500',
      'Retail high': '19800.50',
      'Recon likely': '1100',
      Title: 'Clean',
    });
  });

  it('keep what a spreadsheet would run or change as the text it is', () => {
    expect(cellsOf(lot({ vin: '11111111111111111', make: '=1+1', model: '9-3', lotNumber: '0042' }))).toMatchObject({
      VIN: "'11111111111111111",
      Make: "'=1+1",
      Model: "'9-3",
      'Lot number': "'0042",
    });
  });

  it('end every record with CRLF and begin with a byte-order mark', () => {
    const text = write([LARKSPUR, LARKSPUR]);
    expect(text.startsWith('\ufeffVIN,')).toBe(true);
    expect(text.split('\r\n')).toHaveLength(4);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('take what was changed in a spreadsheet over what the last column remembers', async () => {
    const text = write([LARKSPUR]);
    const [changed] = await readBack(text.replace(',1100,', ',1300,').replace('2026-11-28 14:05', '2026-11-28 15:05'));
    expect(changed?.recon).toEqual([{ label: 'Recon', amount: { likely: 130_000 }, chance: 1_000_000 }]);
    expect(changed?.close).toMatchObject({ instant: Date.parse('2026-11-28T20:05Z'), text: '2026-11-28 15:05' });
  });

  it('remember everything although a program saved amounts and dates in its own way', async () => {
    const resaved = write([LARKSPUR])
      .replace(',1100,', ',"1,100.00",')
      .replace('2026-11-28 14:05', '11/28/2026 2:05 PM')
      .replace(',19800.50,', ',19800.5,');
    expect(await readBack(resaved)).toEqual([LARKSPUR]);
  });

  it('remember everything although columns were taken out', async () => {
    const rows = parseElsewhere(write([LARKSPUR]), { bom: true }) as string[][];
    const kept = rows.map((cells) =>
      cells.filter((_, i) => rows[0]?.[i] === 'VIN' || rows[0]?.[i]?.startsWith('More')),
    );
    const text = kept.map((cells) => csvRow(cells.map((one) => ({ text: one, kind: 'text' })))).join('');
    const [read] = await readBack(text);
    expect(read).toMatchObject({ vin: LARKSPUR.vin, recon: LARKSPUR.recon, close: LARKSPUR.close });
  });

  it('count only by the other columns when the last one was damaged', async () => {
    const [damaged] = await readBack(write([LARKSPUR]).replace('"{', '"{{'));
    expect(damaged).toMatchObject({ vin: LARKSPUR.vin, priceNow: 950_000, recon: [{ label: 'Recon' }] });
  });

  it('bring no link that is not to a web page', async () => {
    const [planted] = await readBack(write([lot({ vin: LARKSPUR.vin, pageUrl: 'javascript:alert(1)' })]));
    expect(planted).not.toHaveProperty('pageUrl');
  });

  it('can have columns of figures that were worked out, which reading leaves out', async () => {
    const extra = [{ heading: 'Max bid', cell: () => ({ text: '9725', kind: 'number' as const }) }];
    const text = [...lotsToCsv([{ facts: LARKSPUR }], CONTEXT, extra)].join('');
    expect(text).toContain(',Max bid\r\n');
    expect(await readBack(text)).toEqual([LARKSPUR]);
  });
});

describe('a cell', () => {
  const text = fc.string({
    unit: fc.constantFrom("'", '=', '-', '+', '@', '\t', '\n', '0', '1', 'x', '"', ',', 'é'),
    maxLength: 6,
  });

  it('loses exactly the guard that it was given', () => {
    fc.assert(
      fc.property(text, (value) => {
        expect(unguardCell(guardCell(value))).toBe(value);
      }),
      { numRuns: 2000 },
    );
  });

  it('never begins like a formula', () => {
    fc.assert(
      fc.property(text, (value) => {
        expect(guardCell(value)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
      }),
    );
  });

  it('of a negative number stays a number', () => {
    expect(
      csvRow([
        { text: '-12.50', kind: 'number' },
        { text: '-12.50', kind: 'text' },
      ]),
    ).toBe(`-12.50,"'-12.50"\r\n`);
  });

  it('of any text is read alike by another parser and by our own', () => {
    fc.assert(
      fc.property(fc.array(text, { minLength: 2, maxLength: 4 }), (values) => {
        const row = csvRow(values.map((value) => ({ text: value, kind: 'text' })));
        const expected = values.map(guardCell);
        expect(parseElsewhere(row, { record_delimiter: '\r\n' })).toEqual([expected]);
        const ours = [...readRecords(row, { ...sniffDialect(row), delimiter: ',' })].flatMap(({ records }) => records);
        expect(ours[0]).toEqual(expected);
      }),
    );
  });

  it('is not quoted where nothing calls for it', () =>
    expect(csvRow([{ text: 'plain', kind: 'text' }])).toBe('plain\r\n'));
});

it('amounts are written without what only people need', () => {
  expect(cellsOf(lot({ lotNumber: '1', priceNow: 1_234_550 }))['Price now']).toBe('12345.50');
});
