import { describe, expect, it } from 'vitest';
import { COLUMN_FIELDS } from '../../src/intake/columns/column-fields.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { readHeading, zoneInHeading } from '../../src/intake/columns/read-heading.ts';
import { CONTEXT } from './intake-context.ts';

const fields = (headings: readonly string[] | null, rows: readonly (readonly string[])[] = []) =>
  guessColumns(headings, rows, CONTEXT).map(({ field }) => field);

describe('a heading', () => {
  it.each([
    ['VIN', 'vin'],
    ['Vehicle Identification Number', 'vin'],
    ['LOT #', 'lotNumber'],
    ['Run No.', 'lotNumber'],
    ['Odometer_Reading', 'miles'],
    ['ODO (mi)', 'miles'],
    ['Mileage (km)', 'kilometres'],
    ['currentBid', 'priceNow'],
    ['High Bid ($)', 'priceNow'],
    ['Current bid amount', 'priceNow'],
    ['Close Date', 'closeDate'],
    ['closing-time', 'closeTime'],
    ['Ends (ET)', 'closes'],
    ['Time zone', 'zone'],
    ['Est. retail', 'retailLikely'],
    ['Retail – low', 'retailLow'],
    ['Title Status', 'title'],
    ['Year / Make / Model', 'car'],
    ['Seller notes', 'notes'],
  ])('%j is %s', (heading, field) => expect(readHeading(heading)?.field).toBe(field));

  it.each([
    'Max bid',
    'My bid limit',
    'Reserve price',
    'Starting bid',
    'Buy fee',
    '__proto__',
    'constructor',
    '',
    '  ',
  ])('%j is none of the fields', (heading) => expect(readHeading(heading)).toBeNull());

  it('is read for every label and every other wording in the table of fields', () => {
    for (const { id, label, words } of COLUMN_FIELDS) {
      for (const wording of [label, ...words.split('; ')].filter((one) => one !== '')) {
        expect([wording, readHeading(wording)]).toEqual([wording, { field: id, exact: true }]);
      }
    }
  });

  it.each([
    ['Ends (ET)', 'ET'],
    ['Close time - Mountain', 'Mountain'],
    ['Close Time, Pacific Time', 'Pacific Time'],
    ['Closes', null],
    ['Client', null],
  ])('%j names the zone %s', (heading, letters) => expect(zoneInHeading(heading)).toBe(letters));
});

describe('the columns of a table', () => {
  it('are known by their headings, in any order', () => {
    const guesses = guessColumns(['Notes', 'bid', 'VIN', 'color'], [['x', '9,500', '1ZL3H4C21M0104471', 'white']]);
    expect(guesses).toEqual([
      { column: 0, heading: 'Notes', field: 'notes', sure: 'certain' },
      { column: 1, heading: 'bid', field: 'priceNow', sure: 'certain' },
      { column: 2, heading: 'VIN', field: 'vin', sure: 'certain' },
      { column: 3, heading: 'color', field: null, sure: 'doubtful' },
    ]);
  });

  it('are known by their cells where there are no headings', () => {
    const rows = [
      ['1ZL3H4C21M0104471', '2021', 'Larkspur', '45,210 mi', '$9,500', '11/28/2026 2:05 PM', 'Clean', 'Saltmarsh'],
      [
        '1ZL3H4C23M0104472',
        '2020',
        'Larkspur',
        '145,210 mi',
        '$8,500',
        '11/28/2026 2:10 PM',
        'Salvage',
        'saguaro flats',
      ],
    ];
    expect(fields(null, rows)).toEqual(['vin', 'year', null, 'miles', 'priceNow', 'closes', 'title', 'venue']);
    expect(guessColumns(null, rows)[0]).toMatchObject({ heading: 'Column 1', sure: 'likely' });
  });

  it('show a whole car in one column', () => {
    expect(fields(null, [['2021 Larkspur Hauler 250'], ['2019 Larkspur Parcel KT']])).toEqual(['car']);
  });

  it('take "End time" for whole closings when its cells are that, and for a time when they are not', () => {
    expect(fields(['End time'], [['11/28/2026 2:05 PM']])).toEqual(['closes']);
    expect(fields(['End date', 'End time'], [['11/28/2026', '2:05 PM']])).toEqual(['closeDate', 'closeTime']);
  });

  it('are doubted when the cells contradict the heading', () => {
    expect(guessColumns(['VIN', 'Make'], [['Larkspur', 'Larkspur']])[0]).toMatchObject({
      field: 'vin',
      sure: 'doubtful',
    });
  });

  it('give a field to the surer of two, and notes to both', () => {
    expect(fields(['Lot bid', 'Current bid', 'Notes', 'Remarks'], [['9,000', '9,500', 'a', 'b']])).toEqual([
      null,
      'priceNow',
      'notes',
      'notes',
    ]);
    expect(fields(['VIN', 'VIN'], [['1ZL3H4C21M0104471', 'x']])).toEqual(['vin', null]);
  });

  it('go as far as half of the rows go; beyond that a row is at fault', () => {
    expect(fields(['VIN'], [['1ZL3H4C21M0104471', 'a'], ['1ZL3H4C23M0104472', 'b'], ['x']])).toHaveLength(2);
    expect(fields(['VIN'], [['1ZL3H4C21M0104471', ''], ['1ZL3H4C23M0104472', 'b'], ['x']])).toHaveLength(1);
  });
});
