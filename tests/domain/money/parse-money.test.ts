import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { MOST_WRITTEN, parseMoney } from '../../../src/domain/money/parse-money.ts';

const read = (text: string, decimal?: '.' | ',') => {
  const amount = parseMoney(text, decimal === undefined ? {} : { decimal });
  return amount.ok ? amount.value : amount.reason;
};

describe('an amount of money', () => {
  it.each([
    ['$12,345', 1_234_500],
    ['12345.50', 1_234_550],
    ['1234.5', 123_450],
    ['12.5k', 1_250_000],
    ['12.5 K', 1_250_000],
    ['3.456k', 345_600],
    ['USD 9,500', 950_000],
    ['9500 usd', 950_000],
    ['US$ 9,500', 950_000],
    ['9,500 dollars', 950_000],
    ['9,500.00 ', 950_000],
    ['9\u00a0500', 950_000],
    ['9\u202f500.25', 950_025],
    ['9’500', 950_000],
    ['\u200e$9,500\u200f', 950_000],
    ['１２，３４５', 1_234_500],
    ['＄１２．５０', 1_250],
    ['.50', 50],
    ['5.', 500],
    ['0', 0],
    ['1,234,567.89', 123_456_789],
  ])('reads %j', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['(1,200)', -120_000],
    ['($1,200.50)', -120_050],
    ['-$500', -50_000],
    ['$-500', -50_000],
    ['−500', -50_000],
    ['500-', -50_000],
  ])('reads %j as less than nothing', (text, expected) => expect(read(text)).toBe(expected));

  it('has no negative zero', () => expect(Object.is(read('-0'), 0)).toBe(true));

  it.each([
    ['3.456', 'ambiguous'],
    ['1.234,56', 'ambiguous'],
    ['1.234.567', 'ambiguous'],
    ['12,34', 'ambiguous'],
    ['1,2345', 'ambiguous'],
    ['0.125', 'too-fine'],
    ['1,234.567', 'too-fine'],
    ['99999999999', 'too-large'],
    ['9'.repeat(50), 'too-large'],
    ['9,000-9,500', 'two-amounts'],
    ['9k to 10k', 'two-amounts'],
    ['€ 500', 'other-currency'],
    ['CAD 500', 'other-currency'],
    ['C$500', 'other-currency'],
    ['-500-', 'not-money'],
    ['(-500)', 'not-money'],
    ['1e5', 'not-money'],
    ['$', 'not-money'],
    ['nine', 'not-money'],
    ['12 34', 'not-a-number'],
    ['', 'empty'],
    [' \u00a0 ', 'empty'],
  ])('refuses %j: %s', (text, reason) => expect(read(text)).toBe(reason));

  it.each([
    ['3.456', ',', 345_600],
    ['1.234,56', ',', 123_456],
    ['12,5', ',', 1_250],
    ['1,234', '.', 123_400],
    ['3.456', '.', 'too-fine'],
    ['1.234,56', '.', 'ambiguous'],
    ['1,234', ',', 'too-fine'],
  ] as const)('reads %j with decimals after a %j as %s', (text, mark, expected) =>
    expect(read(text, mark)).toBe(expected),
  );

  it('says what an ambiguous figure could mean', () => {
    expect(parseMoney('3.456')).toMatchObject({
      message: '“3.456” could mean 3,456, or 3 and a fraction. Write it the way you mean it.',
    });
  });

  it.each(['9'.repeat(1_000_000), '1,'.repeat(500_000), `${' '.repeat(1_000_000)}x`])(
    'refuses a megabyte of digits, on which a careless pattern would not come to an end',
    (text) => expect(parseMoney(text).ok).toBe(false),
  );
});

describe('a written amount', () => {
  it.each([
    [972_500, {}, '$9,725'],
    [972_550, {}, '$9,725.50'],
    [972_550, { cents: 'never' }, '$9,726'],
    [972_500, { cents: 'always' }, '$9,725.00'],
    [-120_000, {}, '−$1,200'],
    [120_000, { sign: 'always' }, '+$1,200'],
    [-20, { cents: 'never' }, '$0'],
    [-50, { cents: 'never' }, '−$1'],
    [0, { sign: 'always' }, '$0'],
    [5, {}, '$0.05'],
  ] as const)('of %d cents with %j is %s', (amount, how, text) => expect(formatMoney(cents(amount), how)).toBe(text));

  it('is read back to the cent', () => {
    fc.assert(
      fc.property(fc.integer({ min: -MOST_WRITTEN, max: MOST_WRITTEN }), (amount) => {
        for (const format of [{}, { cents: 'always' }, { sign: 'always' }] as const) {
          expect(read(formatMoney(cents(amount), format))).toBe(amount === 0 ? 0 : amount);
        }
      }),
    );
  });
});
