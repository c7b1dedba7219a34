import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { canonicalJson } from '../../src/journal/canonical-json.ts';
import { entryHash, hashOfText } from '../../src/journal/entry-hash.ts';
import { nextEntryId, timeOfId } from '../../src/journal/sortable-id.ts';

test('the example of RFC 8785, section 3.2.2 and 3.2.3', () => {
  const input = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`;
  expect(canonicalJson(JSON.parse(input))).toBe(
    String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
  );
});

test('the order of members in RFC 8785, section 3.2.3: by UTF-16 code units', () => {
  const input = {
    '\u20ac': 'Euro Sign',
    '\r': 'Carriage Return',
    '\ufb33': 'Hebrew Letter Dalet With Dagesh',
    '1': 'One',
    '\ud83d\ude00': 'Emoji: Grinning Face',
    '\u0080': 'Control',
    '\u00f6': 'Latin Small Letter O With Diaeresis',
  };
  const names = [...canonicalJson(input).matchAll(/"([A-Z][^"]+)"/g)].map(([, name]) => name);
  expect(names).toEqual([
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ]);
});

// Computed independently: the package of one of the authors of RFC 8785, and the runtime's own SHA-256.
test('any JSON value, and the hash over it', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string({ unit: 'binary' }), fc.jsonValue()), (value) => {
      const plain: Record<string, unknown> = JSON.parse(JSON.stringify(value));
      const ours = canonicalJson(plain);
      expect(ours).toBe(canonicalize(plain));
      expect(hashOfText(ours)).toBe(createHash('sha256').update(ours).digest('hex'));
      const { hash: _, ...rest } = plain;
      expect(entryHash(plain)).toBe(createHash('sha256').update(canonicalJson(rest)).digest('hex'));
    }),
    { numRuns: 100 },
  );
});

test('the example of FIPS 180-4 for SHA-256', () => {
  expect(hashOfText('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

test('the time in an id is written as in the example of the ULID specification', () => {
  expect(nextEntryId(instant(1_469_918_176_385), null, new Uint8Array(8)).slice(0, 10)).toBe('01ARYZ6S41');
  expect(timeOfId('01ARYZ6S41TSV4RRFFQ69G5FAV')).toBe(1_469_918_176_385);
  expect(timeOfId('7ZZZZZZZZZZZZZZZZZZZZZZZZZ')).toBe(2 ** 48 - 1);
});
