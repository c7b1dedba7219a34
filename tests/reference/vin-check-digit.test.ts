import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDigitMatches, expectedCheckDigit, VIN_CHARACTERS } from '../../src/domain/vin/check-digit.ts';
import { type Vin, vinSchema } from '../../src/domain/vin/vin.ts';

const vin = (text: string): Vin => vinSchema.parse(text);

/** The value of each character as printed in 49 CFR 565.15(c), Table III, written out here a second time. */
const PRINTED: Record<string, number> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8, J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
  ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
  ...{ 0: 0, 1: 1, 2: 2, 3: 3, 4: 4, 5: 5, 6: 6, 7: 7, 8: 8, 9: 9 },
};

const character = fc.constantFrom(...VIN_CHARACTERS);
const anyVin = fc.array(character, { minLength: 17, maxLength: 17 }).map((list) => vin(list.join('')));
const rightVin = anyVin.map((text) => vin(text.slice(0, 8) + expectedCheckDigit(text) + text.slice(9)));
const place = fc.integer({ min: 0, max: 16 });
const put = (text: string, index: number, by: string): Vin => vin(text.slice(0, index) + by + text.slice(index + 1));

describe('the check digit', () => {
  test.each([
    ['1G4AH59H45G118341', '4', '49 CFR 565, sample calculation (Table V of the earlier text)'],
    ['1J9RP1A36A1644345', '6', "the US agency's outline for new manufacturers"],
    ['1M8GDM9AXKP042788', 'X', 'computed independently'],
    ['11111111111111111', '1', 'computed independently'],
  ])('of %s is %s (%s)', (text, digit) => {
    expect(expectedCheckDigit(vin(text))).toBe(digit);
    expect(checkDigitMatches(vin(text))).toBe(true);
  });

  test('does not depend on what stands in position 9', () => {
    fc.assert(
      fc.property(anyVin, character, (text, other) => {
        expect(expectedCheckDigit(put(text, 8, other))).toBe(expectedCheckDigit(text));
      }),
    );
  });

  test('stays when a character gives way to another of the same value: such a slip is never found', () => {
    fc.assert(
      fc.property(rightVin, place, character, (text, index, other) => {
        fc.pre(index !== 8 && PRINTED[text.charAt(index)] === PRINTED[other]);
        expect(checkDigitMatches(put(text, index, other))).toBe(true);
      }),
    );
  });

  test('catches every change of value at any one position other than 9', () => {
    fc.assert(
      fc.property(rightVin, place, character, (text, index, other) => {
        fc.pre(index !== 8 && PRINTED[text.charAt(index)] !== PRINTED[other]);
        expect(checkDigitMatches(put(text, index, other))).toBe(false);
      }),
    );
  });

  test('lets about one in twelve single slips pass, so that a match is no proof (computed independently: 7.99%)', () => {
    let tried = 0;
    let passed = 0;
    for (const text of fc.sample(rightVin, { seed: 17, numRuns: 60 }))
      for (let index = 0; index < 17; index += 1)
        for (const other of VIN_CHARACTERS)
          if (other !== text.charAt(index)) {
            tried += 1;
            if (checkDigitMatches(put(text, index, other))) passed += 1;
          }
    expect(passed / tried).toBeGreaterThan(0.06);
    expect(passed / tried).toBeLessThan(0.1);
  });
});
