import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePercent } from '../../../src/domain/money/parse-percent.ts';

const read = (text: string, decimal?: '.' | ',') => {
  const rate = parsePercent(text, decimal === undefined ? {} : { decimal });
  return rate.ok ? rate.value : rate.reason;
};

describe('a percentage', () => {
  it.each([
    ['8 %', 80_000],
    ['8', 80_000],
    ['8.625', 86_250],
    ['8.0050%', 80_050],
    ['8 5/8 %', 86_250],
    ['8-5/8', 86_250],
    ['8⅝%', 86_250],
    ['1/8 %', 1_250],
    ['85 bps', 8_500],
    ['862.5 basis points', 86_250],
    ['0.08%', 800],
    ['0', 0],
    ['100 percent', 1_000_000],
    ['1,000 %', 10_000_000],
  ])('reads %j', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['0.08', 'ambiguous'],
    ['8,5', 'ambiguous'],
    ['8.12345', 'too-fine'],
    ['1/3 %', 'too-fine'],
    ['1,001 %', 'too-large'],
    ['5/0', 'not-a-rate'],
    ['9/8', 'not-a-rate'],
    ['12 8', 'not-a-rate'],
    ['-8', 'not-a-rate'],
    ['', 'empty'],
  ])('refuses %j: %s', (text, reason) => expect(read(text)).toBe(reason));

  it('reads a decimal comma where it is known to be one', () => expect(read('8,625 %', ',')).toBe(86_250));

  it('keeps every millionth that was written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (ppm) => {
        const digits = String(ppm).padStart(5, '0');
        expect(read(`${digits.slice(0, -4)}.${digits.slice(-4)} %`)).toBe(ppm);
      }),
    );
  });
});
