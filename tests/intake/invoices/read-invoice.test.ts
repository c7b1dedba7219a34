import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { mapInvoice, mappingFault, mappingOf } from '../../../src/intake/invoices/map-invoice.ts';
import { openInvoice } from '../../../src/intake/invoices/open-invoice.ts';
import { readInvoice } from '../../../src/intake/invoices/read-invoice.ts';
import { openTable } from '../../../src/intake/open-table.ts';

const TODAY = '2026-12-01' as LocalDate;

function read(text: string) {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = mapInvoice(table.value, undefined);
  return { columns, fault: mappingFault(columns), ...readInvoice(table.value, columns, TODAY) };
}

const LONG = `Invoice No,VIN,Lot,Sale Date,Description,Amount
40117,1M8GDM9AXKP042788,0218,11/28/2026,Vehicle sale price,"$9,725.00"
40117,1M8GDM9AXKP042788,0218,11/28/2026,Buy fee,475.00
40117,1M8GDM9AXKP042788,0218,11/28/2026,Courtesy credit,(25.00)
40118,1LX3H4C21M0104471,0310,11/28/2026,Buy fee,n/a
40118,1LX3H4C21M0104471,0310,11/28/2026,Gate pass,forty-five
40118,1LX3H4C21M0104471,0310,31/31/2026,Buy fee,450
40119,1LX3H4C21M0104471,0310,2026-12-01,Wire received,"-5,000.00"
,,,,Total,"15,175.00"`;

const WIDE = `VIN;Lot number;Sold on;Hammer;Buy fee;Gate pass;Freight;Paid;Total
1M8GDM9AXKP042788;218;2026-11-28;9725;450;45;;;10220
1LX3H4C21M0104471;310;2026-11-28;12000;525;45;780;5000;13351`;

describe('an invoice with a row for each amount', () => {
  test('is read with the day, the number and the car of each', () => {
    const { lines, fault } = read(LONG);
    expect(fault).toBeNull();
    expect(lines[0]).toMatchObject({
      row: 2,
      vin: '1M8GDM9AXKP042788',
      lotNumber: '0218',
      number: '40117',
      date: '2026-11-28',
      what: 'cost',
      cost: 'hammer',
      cents: 972_500,
    });
    expect(lines.map(({ cost, cents }) => [cost, cents])).toEqual([
      ['hammer', 972_500],
      ['fee', 47_500],
      ['other', -2500],
      ['other', 500_000],
    ]);
  });

  test('loses a bad row and no other, says which and why, and holds the sum at the foot against the others', () => {
    const { lines, faults } = read(LONG);
    expect(faults.map(({ row }) => row)).toEqual([6, 7, 9]);
    expect(faults[2]?.message).toMatch(/^“Total” says \$15,175, but the rows add up to \$5,175, \$10,000 less/);
    expect(faults[0]?.message).toMatch(/^Amount: “forty-five”/);
    expect(lines.at(-1)).toMatchObject({ row: 8, what: 'payment', cents: 500_000 });
  });
});

describe('an invoice with a row for each car', () => {
  test('gives a line for every amount, named by its heading', () => {
    const { lines } = read(WIDE);
    expect(
      lines.map(({ row, cost, label, what, cents }) => [row, what === 'payment' ? what : cost, label, cents]),
    ).toEqual([
      [2, 'hammer', 'Hammer', 972_500],
      [2, 'fee', 'Buy fee', 45_000],
      [2, 'fee', 'Gate pass', 4500],
      [3, 'hammer', 'Hammer', 1_200_000],
      [3, 'fee', 'Buy fee', 52_500],
      [3, 'fee', 'Gate pass', 4500],
      [3, 'transport', 'Freight', 78_000],
      [3, 'payment', 'Paid', 500_000],
    ]);
  });

  test('says where the amounts do not come to the total of the row, and shows them all the same', () => {
    const { faults } = read(WIDE);
    expect(faults).toEqual([
      { row: 3, message: expect.stringContaining('add up to $13,350, but its total says $13,351') },
    ]);
  });
});

test('a venue’s columns are read as they were said the last time, whatever the headings suggest', () => {
  const table = openTable('VIN,Zeta,Amount\n1M8GDM9AXKP042788,Buy fee,450');
  if (!table.ok) throw new Error(table.message);
  const said = mapInvoice(table.value, undefined).map((column) =>
    column.heading === 'Zeta' ? { ...column, role: 'words' as const } : column,
  );
  const again = mapInvoice(table.value, mappingOf(said));
  expect(again.every(({ remembered }) => remembered)).toBe(true);
  expect(readInvoice(table.value, again, TODAY).lines).toMatchObject([{ label: 'Buy fee', cost: 'fee' }]);
});

test('a table of a size that no invoice has is refused', () => {
  const wide = openInvoice(openTable(`VIN,${'Fee,'.repeat(5000)}\nx,${'1,'.repeat(5000)}`));
  expect(wide.ok ? 'taken' : wide.reason).toBe('too-wide');
  const long = openInvoice(openTable(`VIN,Fee\n${'1ZL3H4C21M0104471,395.00\n'.repeat(250_000)}`));
  expect(long.ok ? 'taken' : long.reason).toBe('too-large');
});

test('a file that names no car, or no amount, is not read', () => {
  expect(read('Date,Amount\n2026-11-28,450\n2026-11-28,45').fault).toMatch(/VIN or the lot number/);
  expect(read('VIN,Lot\n1M8GDM9AXKP042788,218').fault).toMatch(/No column holds an amount/);
});

test('every amount of a good row is read to the cent, whatever rows stand around it', () => {
  const bad = fc.constantFrom('oops', '1.2.3', '5 to 6', '€5');
  const good = fc.integer({ min: 1, max: 9_999_999 });
  fc.assert(
    fc.property(fc.array(fc.oneof(good, bad), { minLength: 1, maxLength: 20 }), (amounts) => {
      const rows = amounts.map(
        (amount) => `1M8GDM9AXKP042788,Buy fee,"${typeof amount === 'number' ? (amount / 100).toFixed(2) : amount}"`,
      );
      const { lines, faults } = read(['VIN,Description,Amount', ...rows].join('\n'));
      expect(lines.map(({ cents }) => cents)).toEqual(amounts.filter((amount) => typeof amount === 'number'));
      expect(faults).toHaveLength(amounts.length - lines.length);
    }),
  );
});
