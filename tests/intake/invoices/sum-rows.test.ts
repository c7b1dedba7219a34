import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { mapInvoice } from '../../../src/intake/invoices/map-invoice.ts';
import { readInvoice } from '../../../src/intake/invoices/read-invoice.ts';
import { openTable } from '../../../src/intake/open-table.ts';

const [ONE, OTHER] = ['7X2DCV4LXPC354578', '7X3UP15C2MT362497'];

function read(text: string) {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  return readInvoice(table.value, mapInvoice(table.value, undefined), '2026-12-18' as LocalDate);
}

// Shapes written by somebody who had not read the code.
describe('totals of an invoice', () => {
  test('are never recorded, and one that its rows don’t come to is named with the difference', () => {
    const { lines, sums, faults } = read(`VIN,Line,Amount
${ONE},Hammer price,10500.00
${ONE},Internet fee,95.00
${ONE},Subtotal,10595.00
${OTHER},Hammer price,11800.00
${OTHER},Internet fee,95.00
${OTHER},Subtotal,11905.00
,Units,2
,Total,23000.00`);
    expect(lines.map(({ cents }) => cents)).toEqual([1_050_000, 9500, 1_180_000, 9500]);
    expect(sums.map(({ row, off }) => [row, off])).toEqual([
      [4, 0],
      [7, 1000],
      [9, 51_000],
    ]);
    expect(faults.map(({ message }) => message)).toEqual([
      '“Subtotal” says $11,905, but the rows add up to $11,895, $10 less. Ask the venue which is right; rows that could not be read are not in it.',
      '“Total” says $23,000, but the rows add up to $22,490, $510 less. Ask the venue which is right; rows that could not be read are not in it.',
    ]);
  });

  test('of charges and of credits each stand under their own column', () => {
    const { sums, faults } = read(`Date,VIN,Memo,Charges,Credits
2026-11-20,${ONE},Hammer price,13900.00,
2026-11-24,${ONE},Check 5001 received,,14342.50
2026-12-01,${ONE},Returned payment,14342.50,
,,Totals,28242.50,14342.50`);
    expect(sums.map(({ stated, off }) => [stated, off])).toEqual([
      [2_824_250, 0],
      [1_434_250, 0],
    ]);
    expect(faults).toEqual([]);
  });

  test('carried forward to a second page are counted once', () => {
    const { lines, faults } = read(`Date,VIN,Description,Amount
12/18/2026,${ONE},Vehicle,15250.00
,,Carried forward,15250.00
,,Brought forward,15250.00
12/18/2026,${OTHER},Vehicle,5200.00
12/18/2026,${OTHER},"Payment received, thank you",-5200.00
,,Amount due,15250.00`);
    expect(lines).toHaveLength(3);
    expect(faults).toEqual([]);
  });
});

test('a total agrees with any rows that it is the sum of, and is off by just what it is changed by', () => {
  const amount = fc.integer({ min: 1, max: 9_999_999 });
  fc.assert(
    fc.property(fc.array(amount, { minLength: 1, maxLength: 12 }), fc.integer({ min: -500, max: 500 }), (all, more) => {
      const written = (cents: number) => (cents / 100).toFixed(2);
      const total = all.reduce((sum, one) => sum + one, 0) + more;
      const rows = all.map((one, i) => `${ONE},Fee ${i},${written(one)}`);
      const { sums } = read(['VIN,Description,Amount', ...rows, `,Total,${written(total)}`].join('\n'));
      expect(sums.map(({ off }) => off)).toEqual(total === 0 ? [0] : [more]);
    }),
  );
});
