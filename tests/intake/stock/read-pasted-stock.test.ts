import { describe, expect, test } from 'vitest';
import { localDateSchema } from '../../../src/domain/time/local-date.ts';
import { readPastedStock } from '../../../src/intake/stock/read-pasted-stock.ts';

const day = (text: string) => localDateSchema.parse(text);
const TODAY = day('2026-11-20');
const car = (days: number, sold: boolean, over: object = {}) => ({ days, sold, enteredAtDays: 0, ...over });

describe('pasted cars of the dealer’s own', () => {
  test('are read from the day each came and the day it sold; without one it is still there', () => {
    const { cars, faults } = readPastedStock(
      'Car\tCame\tSold\nA van\t2026-08-03\t9/11/2026\nB van\t2026-11-01\t',
      TODAY,
    );
    expect(faults).toEqual([]);
    expect(cars).toEqual([car(39, true, { label: 'A van' }), car(19, false, { label: 'B van' })]);
  });

  test('are read from days and yes or no, headings or not', () => {
    expect(readPastedStock('39,yes\n19,no\n0,sold', TODAY).cars).toEqual([car(39, true), car(19, false), car(0, true)]);
    expect(readPastedStock('Days,Sold\n39 days,y', TODAY).cars).toEqual([car(39, true)]);
  });

  test('that came before the list begins count from then on only', () => {
    const { cars, faults } = readPastedStock(
      '2026-05-01,2026-09-01\n2026-08-01,\n2026-01-01,2026-02-01',
      TODAY,
      day('2026-07-01'),
    );
    expect(cars).toEqual([car(123, true, { enteredAtDays: 61 }), car(111, false)]);
    expect(faults).toEqual([{ line: 3, message: expect.stringContaining('before the list begins') }]);
  });

  test.each([
    ['2026-09-01,2026-08-01', 'before it came'],
    ['2026-12-01,', 'still to come'],
    ['soon,', 'with its year'],
    ['39,perhaps', 'whether it sold'],
    [',2026-08-01', 'it is empty'],
    ['2010-01-01,', 'ten years'],
    ['4000,yes', 'ten years'],
  ])('that can’t be read are left out with the reason: %s', (text, words) => {
    const { cars, faults } = readPastedStock(text, TODAY);
    expect(cars).toEqual([]);
    expect(faults).toEqual([{ line: 1, message: expect.stringContaining(words) }]);
  });
});
