import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feeTableSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { readFeeTable } from '../../../src/domain/fees/read-fee-table.ts';

/** Bands as `from flat percent min max`, in dollars, for short expectations. */
function shortly(text: string): readonly string[] {
  return readFeeTable(text).bands.map(({ band }) =>
    [
      band.fromCents / 100,
      `$${band.flatCents / 100}`,
      ...(band.ratePpm > 0 ? [`${band.ratePpm / 10_000}%`] : []),
      ...(band.minimumCents === undefined ? [] : [`min ${band.minimumCents / 100}`]),
      ...(band.maximumCents === undefined ? [] : [`max ${band.maximumCents / 100}`]),
    ].join(' '),
  );
}
const faults = (text: string) => readFeeTable(text).faults;

describe('a pasted fee table', () => {
  test('is read from ranges with a dash, whatever the dash and the spacing', () => {
    const text = '0–499.99  $100\n500 - 999.99  $125\n$1,000.00 to $1,499.99\t$150\n1500—1999.99: 175';
    expect(shortly(text)).toEqual(['0 $100', '500 $125', '1000 $150', '1500 $175']);
    expect(faults(text)).toEqual([]);
  });

  test('is read from bare columns of a spreadsheet: from, to, fee', () => {
    expect(shortly('0\t499.99\t100\n500\t999.99\t125')).toEqual(['0 $100', '500 $125']);
  });

  test('is read from bare columns of a spreadsheet: from, fee', () => {
    expect(shortly('0\t100\n500\t125\n1,000\t150')).toEqual(['0 $100', '500 $125', '1000 $150']);
  });

  test('takes a second figure below the first for a fee, not for an end', () => {
    expect(shortly('0 - 9,999.99 $100\n10,000\t100\t2%')).toEqual(['0 $100', '10000 $100 2%']);
  });

  test('keeps to the columns its heading names', () => {
    const text = 'From\tFlat\tPercent\tMinimum\tMaximum\n0\t100\t\t\t\n1,000\t\t2.5\t150\t\n10,000\t50\t1.25%\t\t900';
    expect(shortly(text)).toEqual(['0 $100', '1000 $0 2.5% min 150', '10000 $50 1.25% max 900']);
    expect(readFeeTable(text).leftOut).toEqual([{ line: 1, text: 'From\tFlat\tPercent\tMinimum\tMaximum' }]);
  });

  test('is read from comma-separated cells when a heading tells their number and quotes hold the amounts together', () => {
    expect(shortly('from,to,fee\n0,499.99,100\n"1,000.00",,"1,250.00"')).toEqual(['0 $100']);
    expect(shortly('from,to,fee\n0,999.99,100\n"1,000.00",,"1,250.00"')).toEqual(['0 $100', '1000 $1250']);
  });

  test('refuses a comma-separated line that a thousands comma has cut in two', () => {
    expect(faults('from,to,fee\n0,999.99,100\n1,000,1,499.99,150')).toMatchObject([{ line: 3 }]);
  });

  test('refuses a heading with two fee columns instead of taking the first', () => {
    expect(faults('Price\tBuy fee\tOnline fee\n0 - 999.99\t100\t50')).toMatchObject([{ line: 1 }]);
  });

  test('understands "and up", "over", "up to", "under" and "or less"', () => {
    expect(shortly('Up to $499.99 $100\n$500+ $125')).toEqual(['0 $100', '500 $125']);
    expect(shortly('Under $500 $100\n500 and up 2%')).toEqual(['0 $100', '500 $0 2%']);
    expect(shortly('$499.99 or less $100\n$500 or more $125')).toEqual(['0 $100', '500 $125']);
    expect(shortly('0 - 500 $100\nover 500 $125')).toEqual(['0 $100', '500.01 $125']);
    expect(shortly('0 - 499.99 $100\nover 500 $125')).toEqual(['0 $100', '500 $125']);
    expect(shortly('Over $0 but not over $500 $100\nOver $500 $125')).toEqual(['0 $100', '500.01 $125']);
  });

  test('ends a list of whole-dollar ends on the next whole dollar', () => {
    expect(shortly('up to 499  100\nup to 999  125')).toEqual(['0 $100', '500 $125']);
    expect(shortly('up to 500.00  100\nup to 1,000.00  125')).toEqual(['0 $100', '500.01 $125']);
  });

  test('reads a percentage with a flat part, a minimum and a maximum in any order', () => {
    expect(shortly('0 - 9,999.99: $100 + 2.5% (min $200, max $600)')).toEqual(['0 $100 2.5% min 200 max 600']);
    expect(shortly('0+ 2% of the sale price, maximum $900, minimum $250')).toEqual(['0 $0 2% min 250 max 900']);
    expect(shortly('0 – 5,000 greater of $200 or 3%')).toEqual(['0 $0 3% min 200']);
    expect(shortly('0 – 5,000 lesser of 3% or $400')).toEqual(['0 $0 3% max 400']);
  });

  test('reads "10k", dot leaders and a free row', () => {
    expect(shortly('0 – 9,999.99 ........ no fee\n10k – 20k ........ $450')).toEqual(['0 $0', '10000 $450']);
  });

  test('joins prices and fees that a PDF put on alternate lines', () => {
    expect(shortly('$0 - $499.99\n$100\n$500 - $999.99\n$125\n$1,000 and up\n2%')).toEqual([
      '0 $100',
      '500 $125',
      '1000 $0 2%',
    ]);
  });

  test('puts two printed columns side by side back in order of price', () => {
    expect(shortly('0 - 499.99 $100   1,000 - 1,499.99 $150\n500 - 999.99 $125   1,500 - 1,999.99 $175')).toEqual([
      '0 $100',
      '500 $125',
      '1000 $150',
      '1500 $175',
    ]);
  });

  test('leaves out lines without a figure, and says so', () => {
    expect(readFeeTable('Buy fees, clean titles\n\n0+ $100').leftOut).toEqual([
      { line: 1, text: 'Buy fees, clean titles' },
    ]);
  });

  test('takes a table that starts at a cent or a dollar from $0, with a note', () => {
    const reading = readFeeTable('$1 – 499.99 $100\n$500 – 999.99 $125');
    expect(reading.bands[0]?.band.fromCents).toBe(0);
    expect(reading.bands[0]?.note).toMatch(/used from \$0/);
  });

  test('notes that the last fee goes on, and that a shared edge pays the upper line', () => {
    const reading = readFeeTable('0 – 500 $100\n500 – 1,000 $125');
    expect(reading.bands[1]?.note).toMatch(/exactly there pays this line’s fee/);
    expect(reading.bands[1]?.note).toMatch(/Nothing is listed above \$1,000/);
    expect(reading.faults).toEqual([]);
  });

  test.each([
    ['a missing line', '0 – 499.99 $100\n1,000 – 1,499.99 $150', 2, /No fee is listed between/],
    ['an overlap', '0 – 600 $100\n500 – 999.99 $125', 2, /goes up to \$600/],
    ['a line that stands twice', '0 – 499.99 $100\n0 – 499.99 $120', 2, /already covers/],
    ['a table that starts above nothing', '500 – 999.99 $125', 1, /starts at \$500/],
    ['prices without a fee', '0 – 499.99\n500 – 999.99 $125', 1, /no fee/],
    ['a fee without prices', 'fee 2.5%', 1, /has no price/],
    ['two fees in a line', '0 – 499.99  $100  $25', 1, /more than one fee/],
    ['a range that runs backwards', '500 – 100 $50', 1, /down to/],
    ['limits that cross', '0+ 2% min $500 max $200', 1, /minimum in this line is above/],
    ['an amount that is not grouped like dollars', '0 – 4,99.99 $100', 1, /more than one way/],
    ['a bracketed amount', '0 – 499.99 ($100)', 1, /more than one way/],
    ['a rate written as a share', 'from\tpercent\n0\t0.025', 2, /can’t be read/],
  ])('with %s names the line and the fault', (_, text, line, message) => {
    expect(faults(text)).toMatchObject([{ line, message: expect.stringMatching(message) }]);
  });

  test('names only the line that could not be read, not the gap it leaves', () => {
    expect(faults('0 – 499.99 $100\n500 – 999.99 call us\n1,500+ $150')).toMatchObject([{ line: 2 }]);
  });

  test('read back from its own writing is the same table', () => {
    const edges = fc.uniqueArray(fc.integer({ min: 1, max: 200 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(
        edges,
        fc.integer({ min: 0, max: 5_000 }),
        fc.constantFrom(' - ', '–', ' to ', '\t'),
        (steps, fee, dash) => {
          const starts = [0, ...steps.toSorted((a, b) => a - b).map((step) => step * 500)];
          const text = starts
            .map((start, i) => {
              const end = starts[i + 1];
              const money = (amount: number) => amount.toLocaleString('en-US');
              return end === undefined
                ? `${money(start)} and up\t$${fee}`
                : `${money(start)}${dash}${money(end - 1)}.99\t$${fee + i}`;
            })
            .join('\n');
          const reading = readFeeTable(text);
          expect(reading.faults).toEqual([]);
          expect(reading.bands.map(({ band }) => band.fromCents / 100)).toEqual(starts);
        },
      ),
    );
  });

  test('never fails on any text, and only offers bands that make a table when it finds no fault', () => {
    const piece = fc.constantFrom(
      '0',
      '500',
      '$1,000',
      '499.99',
      '-',
      'to',
      '+',
      '%',
      '2.5%',
      '\n',
      '\t',
      ' ',
      'min',
      'max',
      'over',
      'k',
      '(',
      ')',
      'from',
      'fee',
      ',',
      '.',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece, { maxLength: 40 }).map((p) => p.join('')),
        ),
        (text) => {
          const reading = readFeeTable(text);
          if (reading.faults.length > 0 || reading.bands.length === 0) return;
          const bands = reading.bands.map(({ band }) => band);
          expect(feeTableSchema.safeParse({ label: 'Fee', bands }).error).toBeUndefined();
        },
      ),
      { numRuns: 2000 },
    );
  });

  test.each(['$5O', '$1OO', '$l50', '$2o5.00', '$50x', '$1,O00'])('a letter in a figure is a fault: %s', (fee) => {
    const { faults } = readFeeTable(`0 – 499.99  $40\n500 – 999.99  ${fee}\n1,000 and up  $90`);
    expect(faults).toEqual([
      { line: 2, message: expect.stringMatching(/A figure in this line can be read in more than/) },
    ]);
  });

  test.each(['450k', '500to 999.99  $40', '500thru 999.99  $40', '$40each'])(
    'a word right behind a figure is none: %s',
    (words) => {
      const { faults } = readFeeTable(words.includes('99') ? words : `0 and up ${words}`);
      expect(faults.map(({ message }) => message).join()).not.toMatch(/more than one way/);
    },
  );
});
