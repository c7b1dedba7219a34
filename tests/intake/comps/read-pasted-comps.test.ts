import { describe, expect, test } from 'vitest';
import { localDateSchema } from '../../../src/domain/time/local-date.ts';
import { readPastedComps } from '../../../src/intake/comps/read-pasted-comps.ts';

const TODAY = localDateSchema.parse('2026-11-27');
const read = (text: string) => readPastedComps(text, TODAY);

describe('pasted comparables', () => {
  test('are read by their headings, in whatever order they stand', () => {
    const { comps, faults, unused } = read(
      'From\tOdometer\tColour\tSold price\tModel year\tSold on\tDays\tDifferences\nOur own\t58k\twhite\t$31,900\t2021\t9/12/2026\t24\tTow package +450; no rack −$300',
    );
    expect(faults).toEqual([]);
    expect(unused).toEqual(['Colour']);
    expect(comps).toEqual([
      {
        line: 2,
        comp: {
          kind: 'sold',
          price: 31_900_00,
          miles: 58_000,
          year: 2021,
          date: '2026-09-12',
          daysListed: 24,
          source: 'Our own',
          differences: [
            { label: 'Tow package', cents: 450_00 },
            { label: 'no rack', cents: -300_00 },
          ],
          leftOut: false,
        },
      },
    ]);
  });

  test('without headings are read in the order of the screen’s own table', () => {
    const { comps } = read('31,900\tsold\t58,000\t2021\t2026-09-12\t24\tOur own\n30,500\tasking\t61,000\t2020');
    expect(comps.map(({ comp }) => [comp.price, comp.kind, comp.miles, comp.year, comp.source])).toEqual([
      [31_900_00, 'sold', 58_000, 2021, 'Our own'],
      [30_500_00, 'asking', 61_000, 2020, undefined],
    ]);
  });

  test('count as asking where nothing says that they sold, and as their heading says otherwise', () => {
    expect(read('Price,Miles\n"18,000",60000').comps[0]?.comp.kind).toBe('asking');
    expect(read('Sold for,Miles\n"18,000",60000').comps[0]?.comp.kind).toBe('sold');
    expect(read('Asking price,Miles\n"18,000",60000').comps[0]?.comp.kind).toBe('asking');
    expect(read('18000,for sale,60000').comps[0]?.comp.kind).toBe('asking');
  });

  test.each([
    ['Price,Miles\n"18,000",sixty', 2, 'Miles: '],
    ['Price,Miles\n3.456,60000', 2, 'Price: '],
    ['18000,traded,60000', 1, 'neither sold nor asking'],
    ['18000,sold,60000,2020,Nov 5', 1, 'with its year'],
    ['18000,sold,60000,2020,2026-11-28', 1, 'still to come'],
    ['18000,sold,60000,2020,2026-11-20,many', 1, 'not a number of days'],
    ['18000,sold,60000,2020,2026-11-20,9,here,a tow hook', 1, 'Tow package +450'],
    ['18000,sold,60000,2020,2026-11-20,9,here,wreck -9000', 1, 'not comparable'],
    ['0,sold', 1, 'above $0'],
    ['Miles,Year\n60000,2020', 1, 'headed “Price”'],
  ])('with a cell that can’t be read leave the row out and say why: %j', (text, line, words) => {
    const { comps, faults } = read(text);
    expect(comps).toEqual([]);
    expect(faults).toEqual([{ line, message: expect.stringContaining(words) }]);
  });

  test('keep the good rows beside a bad one, and skip blank rows without losing count', () => {
    const { comps, faults } = read('18000,sold\n\nnothing,sold\n19000,sold');
    expect(comps.map(({ line }) => line)).toEqual([1, 4]);
    expect(faults.map(({ line }) => line)).toEqual([3]);
  });
});
