import { describe, expect, test } from 'vitest';
import { readVin } from '../../../src/domain/vin/read-vin.ts';

const refusal = (text: string) => {
  const read = readVin(text);
  if (read.ok) throw new Error(`${text} was read`);
  return read;
};

describe('reading a VIN', () => {
  test.each([
    '1J9RP1A36A1644345',
    '1j9rp1a36a1644345',
    ' 1J9 RP1A3 6A 1644345\n',
    '1J9-RP1A3-6A-1644345',
    '*1J9RP1A36A1644345*',
    '1J9RP1A3\u00a06A1644345',
  ])('does not mind how %j is set', (text) => {
    expect(readVin(text)).toEqual({ ok: true, value: '1J9RP1A36A1644345' });
  });

  test('keeps a VIN whose check digit is wrong as it was typed', () => {
    expect(readVin('1J9RP1A37A1644345')).toEqual({ ok: true, value: '1J9RP1A37A1644345' });
  });

  test('says how many characters are missing or too many', () => {
    expect(refusal('1J9RP1A36A164434')).toMatchObject({ reason: 'length', message: /has 16\. 1 character missing/ });
    expect(refusal('1J9RP1A36A164434555').message).toContain('2 characters too many');
    expect(refusal('  ').reason).toBe('empty');
  });

  test('names each character that can not be, with its position, and offers what it looks like', () => {
    const read = refusal('IJ9RP1A36AO644345');
    expect(read.reason).toBe('characters');
    expect(read.message).toBe(
      "A VIN can't hold this: position 1 is I, position 11 is O (the letters I, O and Q are never used).",
    );
    expect(read.repairs.map((repair) => repair.vin)).toEqual(['1J9RP1A36A0644345']);
  });

  test('offers 1 for I and 0 for O and Q, and says whether the check digit then holds', () => {
    expect(refusal('IJ9RPIA36AI644345').repairs).toEqual([
      {
        vin: '1J9RP1A36A1644345',
        positions: [1, 6, 11],
        change: 'position 1: 1 for I, position 6: 1 for I, position 11: 1 for I',
        checkDigitMatches: true,
      },
    ]);
    expect(refusal('1M8GDM9AXKPO42788').repairs[0]).toMatchObject({
      vin: '1M8GDM9AXKP042788',
      checkDigitMatches: true,
    });
    expect(refusal('1M8GDM9AXKPQ42789').repairs[0]).toMatchObject({
      vin: '1M8GDM9AXKP042789',
      checkDigitMatches: false,
    });
  });

  test('offers nothing where a sign could be anything', () => {
    expect(refusal('1J9RP1A36A16443#5')).toMatchObject({ reason: 'characters', repairs: [] });
  });
});
