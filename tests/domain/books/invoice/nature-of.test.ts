import { describe, expect, test } from 'vitest';
import type { InvoiceLine } from '../../../../src/domain/books/invoice/invoice-line.ts';
import { turnedInto, withSaid } from '../../../../src/domain/books/invoice/invoice-line.ts';
import { natureOf } from '../../../../src/domain/books/invoice/nature-of.ts';
import { cents } from '../../../../src/domain/money/cents.ts';
import { day, dollars } from '../folder-test-car.ts';

const UP = cents(2500);
const DOWN = cents(-2500);

// Which way an amount moves what is owed is common practice of statements, no source.
describe('what an amount is', () => {
  test.each([
    ['Buy fee', UP, 'cost'],
    ['Wire transfer fee', UP, 'cost'],
    ['Wire transfer fee', undefined, 'cost'],
    ['Check handling fee', undefined, 'cost'],
    ['Payment processing charge', UP, 'cost'],
    ['WIRE/CHECK CONVENIENCE', UP, 'cost'],
    ['Returned payment fee', UP, 'cost'],
    ['Sale of 2019 Dunmore Parcel Van, paid in full waiver n/a', UP, 'cost'],
    ['Courtesy credit', DOWN, 'cost'],
    ['Wire fee waived', DOWN, 'cost'],
    ['Sales tax removed - resale certificate received', DOWN, 'cost'],
    ['Wire received - thank you', DOWN, 'payment'],
    ['Check no. 5033', DOWN, 'payment'],
    ['ACH payment', DOWN, 'payment'],
    ['Returned payment', UP, 'payment'],
    ['Payment reversed, not honored by bank', UP, 'payment'],
    ['Refund check 8841 issued', UP, 'payment'],
    ['Wire received', undefined, 'unsure'],
    ['Paid by check 2041', undefined, 'unsure'],
    ['Deposit applied', undefined, 'unsure'],
    ['Wire', UP, 'unsure'],
    ['Refund', DOWN, 'unsure'],
    ['Payment received, less wire fee', DOWN, 'unsure'],
  ] as const)('“%s”, which adds %s cents to what is owed, is a %s', (label, raises, nature) => {
    expect(natureOf(label, raises)).toBe(nature);
  });
});

describe('what somebody says of a line', () => {
  const line = (set: Partial<InvoiceLine>): InvoiceLine => ({
    id: '2.1',
    row: 2,
    what: 'payment',
    cost: 'fee',
    label: 'Wire',
    cents: dollars(25),
    ...set,
  });

  test('keeps the direction that the file shows, and takes the amount as it stands where it shows none', () => {
    expect(turnedInto(line({ raises: DOWN }), 'cost').cents).toBe(-2500);
    expect(turnedInto(line({ cents: cents(-2500), raises: UP }), 'cost').cents).toBe(2500);
    expect(turnedInto(line({ what: 'unsure' }), 'cost')).toMatchObject({ what: 'cost', cents: 2500 });
    expect(turnedInto(line({ what: 'unsure' }), 'payment')).toMatchObject({ what: 'payment', cents: 2500 });
    expect(turnedInto(line({ what: 'cost', cents: DOWN, raises: DOWN }), 'payment').cents).toBe(2500);
  });

  test('said twice, a cost and then a payment, is the line as it was', () => {
    const was = line({ raises: DOWN });
    expect(turnedInto(turnedInto(was, 'cost'), 'payment')).toEqual(was);
  });

  test('a day that is written by hand is in doubt no longer', () => {
    const dated = withSaid(line({ dayDoubt: 'to-come', date: day('2027-10-16') }), { date: day('2026-10-16') });
    expect(dated).toMatchObject({ date: '2026-10-16', dayDoubt: undefined });
  });
});
