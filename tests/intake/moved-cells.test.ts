import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnreadCell } from '../../src/domain/lot/unread-cell.ts';
import { parseMoney } from '../../src/domain/money/parse-money.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { unitInHeading } from '../../src/intake/columns/heading-unit.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import type { RowReading } from '../../src/intake/rows/row-reading.ts';
import { CONTEXT } from './intake-context.ts';

async function rowsOf(text: string): Promise<readonly RowReading[]> {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
  const rows: RowReading[] = [];
  for await (const chunk of readInChunks(table.value, columns, CONTEXT, { pause: async () => {} })) rows.push(...chunk);
  return rows;
}
const unreadOf = async (text: string): Promise<readonly (readonly UnreadCell['field'][])[]> =>
  (await rowsOf(text)).map(({ facts }) => (facts.unread ?? []).map(({ field }) => field));

const HEAD = 'Lot number,Venue,Title,Price now,Retail,Recon';

describe('a row with more cells than its table has headings', () => {
  it('is doubted as a whole, also when it is the only one', async () => {
    expect(await unreadOf(`${HEAD}\n7,Saguaro Flats,Clean,9500,18000,1,200\n`)).toEqual([['recon', 'row']]);
    expect(await unreadOf(`${HEAD}\n7,Saguaro Flats,Clean,9500,18,000,1200\n`)).toEqual([['retail', 'row']]);
    expect(await unreadOf(`${HEAD}\n7,Saguaro Flats,Clean,9500,18000,900,ladder rack\n`)).toEqual([['row']]);
  });

  it('is doubted even if all rows have such a cell, and says what to do', async () => {
    const rows = [7, 8, 9].map((lot) => `${lot},Saguaro Flats,Clean,9500,18000,900,one key\n`).join('');
    const read = await rowsOf(`${HEAD}\n${rows}`);
    expect(read.map(({ facts }) => facts.unread?.map(({ text }) => text))).toEqual([
      ['one key'],
      ['one key'],
      ['one key'],
    ]);
    expect(read[0]?.faults[0]?.message).toMatch(/7 cells under 6 headings.*give the last column a heading/);
  });

  it('is not doubted for blank cells at its end, unless another cell does not fit', async () => {
    expect(await unreadOf(`${HEAD}\n7,Saguaro Flats,Clean,9500,18000,900,,,\n`)).toEqual([[]]);
    expect(await unreadOf(`${HEAD}\n7,Saguaro Flats,Clean,9,500,about 18000,\n`)).toEqual([['recon', 'row']]);
  });

  it('is not doubted for blank cells that all rows have, and is for blank cells that only it has', async () => {
    const rows = (end: string) =>
      `7,Saguaro Flats,Clean,9500,18000,900${end}\n8,Saguaro Flats,Clean,9500,18000,900${end}\n`;
    expect(await unreadOf(`${HEAD}\n${rows(',')}`)).toEqual([[], []]);
    expect(await unreadOf(`${HEAD}\n${rows('')}9,Saguaro Flats,Clean,9,500,18000,\n`)).toEqual([[], [], ['row']]);
  });

  it('is not doubted once the user has said what the column holds', async () => {
    const table = openTable(`${HEAD}\n7,Saguaro Flats,Clean,9500,18000,900,one key\n`);
    if (!table.ok) throw new Error(table.message);
    const guessed = guessColumns(table.value.headings, table.value.sample, CONTEXT);
    expect(guessed.at(-1)).toMatchObject({ column: 6, field: null, beyond: true });
    const columns = guessed.map((one) => (one.column === 6 ? { ...one, field: 'notes' as const } : one));
    for await (const [row] of readInChunks(table.value, columns, CONTEXT, { pause: async () => {} })) {
      expect(row?.facts).toMatchObject({ notes: 'one key' });
      expect(row?.facts.unread).toBeUndefined();
    }
  });
});

describe('two columns of one heading', () => {
  const head = 'Lot number,Venue,Retail likely,Retail likely';

  it('have no figure where they differ', async () => {
    const [row] = await rowsOf(`${head}\n7,Saguaro Flats,18000,19500\n`);
    expect(row?.facts.retail).toBeUndefined();
    expect(row?.facts.unread).toEqual([{ field: 'retail', text: '18000 / 19500' }]);
    expect(row?.faults[0]?.message).toMatch(/Two columns are headed for the same thing/);
  });

  it('have the one that they agree on, or that only one of them says', async () => {
    const rows = await rowsOf(`${head}\n7,Saguaro Flats,18000,18000\n8,Saguaro Flats,,19500\n9,Saguaro Flats,17000,\n`);
    expect(rows.map(({ facts }) => facts.retail?.likely)).toEqual([1_800_000, 1_950_000, 1_700_000]);
    expect(rows.map(({ facts }) => facts.unread)).toEqual([undefined, undefined, undefined]);
  });
});

describe('a heading with a unit', () => {
  it.each([
    ['Retail $k', '$k'],
    ['Retail K$', 'K$'],
    ['Price now (000s)', '000s'],
    ['Recon cents', 'cents'],
    ['Retail likely (cents)', 'cents'],
    ['Retail (x1000)', 'x1000'],
    ['Retail, USD thousands', 'thousands'],
    ['Transport (k)', 'k'],
    ['Retail (hundreds)', 'hundreds'],
    ['Retail ¢', '¢'],
    ['Recon hours', 'hours'],
    ['Retail CAD', 'CAD'],
    ['Recon (EUR)', 'EUR'],
    ['Retail €', '€'],
    ['Retail CA$', 'CA$'],
  ])('%j says %j', (heading, unit) => expect(unitInHeading(heading)).toBe(unit));

  it.each([
    'Retail',
    'Retail $',
    'Retail (US$)',
    'Recon USD',
    'Retail 2026',
    'Key recon',
    'Retail likely',
    'Recon (10/1000)',
  ])('%j says none', (heading) => expect(unitInHeading(heading)).toBeNull());

  it('leaves its column unread, with the heading named', async () => {
    const [row] = await rowsOf('Lot number,Venue,Retail $k,Recon hours\n7,Saguaro Flats,18,12\n');
    expect(row?.facts.unread).toEqual([
      { field: 'retail', text: '18' },
      { field: 'recon', text: '12' },
    ]);
    expect(row?.faults.map(({ message }) => message).join()).toMatch(/“Retail \$k” says “\$k”/);
  });
});

describe('the junk that binary arithmetic leaves behind a figure', () => {
  it.each([
    ['31900.000000000004', 3_190_000],
    ['1199.9999999999998', 120_000],
    ['0.30000000000000004', 30],
    ['399.99999999999994', 40_000],
    ['12.300000000000001k', 1_230_000],
  ])('%s is the cent that was meant', (text, cents) => expect(parseMoney(text)).toEqual({ ok: true, value: cents }));

  it('does not make a fraction of a cent one', () => {
    for (const text of ['1199.995', '1199.9949999', '18000.123456789012']) expect(parseMoney(text).ok).toBe(false);
  });

  it('is read away from any sum of amounts, as a spreadsheet shows it', () => {
    const dollars = fc.array(fc.integer({ min: 1, max: 5_000_000 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(dollars, (parts) => {
        const sum = parts.reduce((total, cents) => total + cents / 100, 0);
        const meant = parts.reduce((total, cents) => total + cents, 0);
        expect(parseMoney(String(sum))).toEqual({ ok: true, value: meant });
      }),
    );
  });
});
