import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { findVins } from '../../../src/domain/vin/find-vins.ts';
import { decimalMarkOf, isFree, readInvoiceAmount } from '../../../src/intake/invoices/invoice-amount.ts';
import { isDayFirst, readInvoiceDay } from '../../../src/intake/invoices/invoice-day.ts';

// Written by somebody who had not read the code.
describe('an amount on an invoice', () => {
  test.each([
    ['25.00 CR', -2500],
    ['12,400.00 DR', 1_240_000],
    ['CR 25.00', -2500],
    ['25.00-', -2500],
    ['−25.00', -2500],
    ['- $40.00', -4000],
    ['$ (40.00)', -4000],
    ['($95.00)', -9500],
    ['.50', 50],
  ])('“%s” is %s cents', (cell, amount) => {
    const read = readInvoiceAmount(cell, 'Amount', undefined);
    expect(read.ok ? read.value : read.message).toBe(amount);
  });

  test.each(['1O.00', 'CAD 85,00', 'CR', '25.00 CRX'])('“%s” is asked about, not guessed', (cell) => {
    expect(readInvoiceAmount(cell, 'Amount', undefined).ok).toBe(false);
  });

  test('of a column in cents is cents, and dollars with a point stay dollars', () => {
    expect(readInvoiceAmount('34500', 'line_cents', undefined)).toMatchObject({ value: 34_500 });
    expect(readInvoiceAmount('887.50', 'line_cents', undefined)).toMatchObject({ value: 88_750 });
  });

  test('with a decimal comma is read so only where no cell has a decimal point', () => {
    expect(decimalMarkOf(['US$ 1.250,00', 'USD 980,00'])).toBe(',');
    expect(decimalMarkOf(['1,250.00', '980,00'])).toBeUndefined();
    expect(readInvoiceAmount('US$ 1.250,00', 'Betrag', ',')).toMatchObject({ value: 125_000 });
  });

  test('may be words that say there is nothing to pay', () => {
    expect(['-', 'N/C', 'waived', 'included', ''].every(isFree)).toBe(true);
    expect(['see note', '0.50', 'waived 25'].some(isFree)).toBe(false);
  });
});

describe('a day on an invoice', () => {
  const today = '2027-01-06' as LocalDate;
  const read = (text: string, dayFirst = false) => readInvoiceDay(text, today, dayFirst);

  test.each([
    ['10/16', '2026-10-16', 'year-guessed'],
    ['12/31', '2026-12-31', 'year-guessed'],
    ['01/02', '2027-01-02', 'year-guessed'],
    ['01/06', '2027-01-06', 'year-guessed'],
    ['01/09', '2026-01-09', 'year-guessed'],
    ['Oct 16', '2026-10-16', 'year-guessed'],
    ['16 Oct', '2026-10-16', 'year-guessed'],
    ['10/16/26', '2026-10-16', undefined],
    ['Oct 16, 26', '2026-10-16', undefined],
    ['16-Oct-26', '2026-10-16', undefined],
    ['06-Nov-2026', '2026-11-06', undefined],
    ['20261203', '2026-12-03', undefined],
    ['46311', '2026-10-16', undefined],
    ['02/06/2027', '2027-02-06', 'to-come'],
  ])('%s is %s', (text, date, dayDoubt) => {
    expect(read(text)).toEqual({ ok: true, value: { date, ...(dayDoubt !== undefined && { dayDoubt }) } });
  });

  test('that was in no year near, or is no day of the calendar, is refused', () => {
    expect(read('02/29').ok).toBe(false);
    expect(read('Friday').ok).toBe(false);
  });

  test('stands before the month only where the column proves it', () => {
    expect(isDayFirst(['16/10/2026', '05/11/2026'])).toBe(true);
    expect(isDayFirst(['05/11/2026', '06/11/2026'])).toBe(false);
    expect(isDayFirst(['16/10/2026', '10/16/2026'])).toBe(false);
    expect(read('05/11/2026', true)).toMatchObject({ value: { date: '2026-11-05' } });
  });
});

describe('VINs are found by what they are', () => {
  test.each([
    ['Online bid fee (7X2DCV4L5KC259550)', ['7X2DCV4L5KC259550']],
    ['VIN#7X2DPV2S3RC378335*', ['7X2DPV2S3RC378335']],
    ['7X2D PV2S3-RC378335', ['7X2DPV2S3RC378335']],
    ['Buyer premium 7x2dcv4lxpc354578', ['7X2DCV4LXPC354578']],
    ['7X1HT25B2KB204117 / 7X2DCV4L6RC212036', ['7X1HT25B2KB204117', '7X2DCV4L6RC212036']],
    ['20261112000044117', []],
    ['7X2DCV4LXPC35457', []],
  ])('in “%s”', (text, vins) => {
    expect(findVins(text)).toEqual(vins);
  });
});
