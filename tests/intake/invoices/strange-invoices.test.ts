import { describe, expect, test } from 'vitest';
import type { InvoiceLine } from '../../../src/domain/books/invoice/invoice-line.ts';
import type { BookedCar } from '../../../src/domain/books/invoice/judge-line.ts';
import type { FolderCar } from '../../../src/domain/books/invoice/match-car.ts';
import { matchInvoice, startsTicked } from '../../../src/domain/books/invoice/match-invoice.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { mapInvoice, mappingFault } from '../../../src/intake/invoices/map-invoice.ts';
import { readInvoice } from '../../../src/intake/invoices/read-invoice.ts';
import { openTable } from '../../../src/intake/open-table.ts';

// Shapes of invoices written by somebody who had not read the code; VINs are invented.
const VIN = '7X1HT25B2KB204117';

function folder(fees: readonly (readonly [string, number])[], hammer: number, set: Partial<BookedCar> = {}) {
  const expected = [
    {
      key: 'hammer',
      cost: 'hammer' as const,
      label: 'Hammer price',
      cents: cents(hammer * 100),
      from: 'From the result',
    },
    ...fees.map(([label, amount], i) => ({
      key: `fee-${i}`,
      cost: 'fee' as const,
      label,
      cents: cents(amount * 100),
      from: 'the schedule',
    })),
  ];
  const car: FolderCar & BookedCar = {
    lot: 'A' as LotId,
    vin: VIN,
    venueId: 'saguaro',
    won: '2026-10-15' as LocalDate,
    hammer: cents(hammer * 100),
    expected,
    costs: [],
    payments: [],
    owed: cents(0),
    ...set,
  };
  return car;
}

/** Every line as what it was taken for, its dollars, and whether it starts out checked. */
function taken(text: string, car: FolderCar & BookedCar, today = '2026-10-20') {
  const table = openTable(text);
  if (!table.ok) throw new Error(table.message);
  const columns = mapInvoice(table.value, undefined);
  expect(mappingFault(columns)).toBeNull();
  const { lines, faults } = readInvoice(table.value, columns, today as LocalDate);
  const judged = matchInvoice(lines, [car], 'saguaro').flatMap(({ match, lines: own }) =>
    own.map((one) => ({ ...one, ticked: startsTicked(match, one) })),
  );
  const short = (line: InvoiceLine) => [line.label, line.what, line.cents / 100] as const;
  return { faults, judged, rows: judged.map(({ line, ticked }) => [...short(line), ticked]) };
}

describe('a fee that is named after a way to pay is never taken for a payment', () => {
  test('where minus signs show what lowers the bill', () => {
    const { rows } = taken(
      `Date,Invoice,VIN,Description,Amount
10/16/2026,SF-20417,${VIN},Vehicle purchase,12300.00
10/16/2026,SF-20417,${VIN},Buyer premium,410.00
10/16/2026,SF-20417,${VIN},Wire transfer fee,25.00
10/18/2026,SF-20417,${VIN},Wire received - thank you,-12710.00
10/18/2026,SF-20417,${VIN},Wire,30.00
,,,Balance due,55.00`,
      folder([['Buyer premium', 410]], 12_300),
    );
    expect(rows).toEqual([
      ['Vehicle purchase', 'cost', 12_300, true],
      ['Buyer premium', 'cost', 410, true],
      ['Wire transfer fee', 'cost', 25, false],
      ['Wire received - thank you', 'payment', 12_710, true],
      ['Wire', 'unsure', 30, false],
    ]);
  });

  test('where CR and DR show it', () => {
    const { rows } = taken(
      `Posted,Ref,Vehicle,Narrative,Amount
06-Oct-2026,SF-20588,${VIN},Vehicle purchase,"12,300.00 DR"
07-Oct-2026,SF-20588,${VIN},Buyer premium adjustment,25.00 CR
09-Oct-2026,SF-20588,${VIN},Check handling fee,20.00 DR
09-Oct-2026,SF-20588,${VIN},Check 4471 received,"5,000.00 CR"`,
      folder([['Buyer premium', 410]], 12_300),
    );
    expect(rows).toEqual([
      ['Vehicle purchase', 'cost', 12_300, true],
      ['Buyer premium adjustment', 'cost', -25, false],
      ['Check handling fee', 'cost', 20, false],
      ['Check 4471 received', 'payment', 5000, true],
    ]);
  });

  test('where charges and credits have columns of their own, and a payment that came back is no cost', () => {
    const { rows, judged } = taken(
      `Date,Doc,Unit VIN,Memo,Charges,Credits
2026-10-16,TLE-5602,${VIN},Hammer price,12300.00,
2026-10-17,TLE-5602,${VIN},Check 5001 received,,12300.00
2026-10-18,TLE-5602,${VIN},Returned payment,12300.00,
2026-10-18,TLE-5602,${VIN},Returned payment fee,40.00,`,
      folder([], 12_300),
    );
    expect(rows).toEqual([
      ['Hammer price', 'cost', 12_300, true],
      ['Check 5001 received', 'payment', 12_300, true],
      ['Returned payment', 'payment', -12_300, false],
      ['Returned payment fee', 'cost', 40, false],
    ]);
    expect(judged[2]).toMatchObject({ verdict: 'came-back', why: expect.stringContaining('that was returned') });
  });

  test('and where the file shows no direction at all, money is asked about and nothing of it is checked', () => {
    const { rows, judged } = taken(
      `Date,VIN,Line,Amount
10/16/2026,${VIN},Vehicle,12300.00
10/17/2026,${VIN},Paid by check 2041,12300.00
10/17/2026,${VIN},Wire,25.00
10/17/2026,${VIN},Payment processing fee,35.00`,
      folder([], 12_300),
    );
    expect(rows).toEqual([
      ['Vehicle', 'cost', 12_300, true],
      ['Paid by check 2041', 'unsure', 12_300, false],
      ['Wire', 'unsure', 25, false],
      ['Payment processing fee', 'cost', 35, false],
    ]);
    expect(judged[1]?.why).toBe('Money paid, or a charge? The file does not make it clear. Choose one.');
  });
});

test('a price or a fee is answered once, however a second line words it', () => {
  const { judged } = taken(
    `Date,VIN,Charge,USD
10/16/2026,${VIN},Hammer,12300.00
10/16/2026,${VIN},Buyer premium,410.00
10/16/2026,${VIN},Buyer premium standard,410.00`,
    folder([['Buyer premium', 410]], 12_300),
  );
  expect(judged.map(({ verdict, ticked }) => [verdict, ticked])).toEqual([
    ['as-expected', true],
    ['as-expected', true],
    ['again', false],
  ]);
});

test('a day before the win, or still to come, is asked for', () => {
  const { judged } = taken(
    `Date,VIN,Description,Charge
01/02,${VIN},Hammer price,12300.00
01/09,${VIN},Buyer premium,410.00
03/09/2027,${VIN},Online bid fee,85.00`,
    folder(
      [
        ['Buyer premium', 410],
        ['Online bid fee', 85],
      ],
      12_300,
      { won: '2026-12-28' as LocalDate },
    ),
    '2027-01-06',
  );
  expect(judged.map(({ line, verdict, ticked }) => [line.date, verdict, ticked])).toEqual([
    ['2027-01-02', 'as-expected', true],
    [undefined, 'which-day', false],
    ['2027-03-09', 'which-day', false],
  ]);
});

test('the car is known by a VIN among the words, and a column of VINs by what it holds', () => {
  const text = taken(
    `posted;what;usd
2026-10-16;Sale of ${VIN} 2019 Harrow Teamster;12300.00
2026-10-16;Buyer premium (${VIN});410.00`,
    folder([['Buyer premium', 410]], 12_300),
  );
  expect(text.judged.map(({ ticked }) => ticked)).toEqual([true, true]);
  const column = taken(
    `SALE DATE,UNIT #,STOCK,TYPE,NET\n10/16/2026,${VIN.toLowerCase()},40017,VEHICLE,12300.00`,
    folder([], 12_300),
  );
  expect(column.rows).toEqual([['VEHICLE', 'cost', 12_300, true]]);
});
