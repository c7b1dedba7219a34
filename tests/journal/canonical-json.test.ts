import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonicalForm, canonicalJson } from '../../src/journal/canonical-json.ts';

test('the order in which members were written does not show', () => {
  expect(canonicalJson({ b: [{ d: 1, c: 2 }], a: null })).toBe('{"a":null,"b":[{"c":2,"d":1}]}');
});

test('a member that is undefined is as if it were not there', () => {
  expect(canonicalJson({ a: undefined, b: 1 })).toBe('{"b":1}');
});

test('minus zero is zero, as JSON gives it back', () => {
  expect(canonicalJson(-0)).toBe('0');
});

test('half a surrogate pair is written as an escape, so that UTF-8 can hold it', () => {
  expect(canonicalJson({ '\ud800': '\udc00' })).toBe('{"\\ud800":"\\udc00"}');
});

test('a member named __proto__ is a member', () => {
  expect(canonicalJson(JSON.parse('{"__proto__":1,"a":2}'))).toBe('{"__proto__":1,"a":2}');
});

test('what JSON cannot hold is refused, not dropped', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 5n, () => 1, [undefined], Symbol('x')])
    expect(() => canonicalJson(value)).toThrow(TypeError);
});

test('members named by numbers are sorted as text like all others', () => {
  expect(canonicalJson({ 10: 1, 9: { 2: 0, 10: 0, a: 0 }, '-1': 0, '01': 0 })).toBe(
    '{"-1":0,"01":0,"10":1,"9":{"10":0,"2":0,"a":0}}',
  );
});

test('any value is written as member by member by hand, and the plain value is what the text says', () => {
  const names = fc.oneof(
    fc.constantFrom('__proto__', '10', '9', '01', 'toJSON', 'b', 'a', '\u20ac', '\ud83d\ude02'),
    fc.string(),
  );
  const { value: values } = fc.letrec((tie) => ({
    value: fc.oneof(
      { maxDepth: 4 },
      fc.constantFrom<unknown>(null, true, -0, 1e21, 0.1, 'é"\n'),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.string({ unit: 'binary' }),
      fc.array(tie('value'), { maxLength: 4 }),
      fc.dictionary(names, tie('value'), { maxKeys: 5 }),
    ),
  }));
  fc.assert(
    fc.property(values, (value) => {
      const { text, plain } = canonicalForm(value);
      expect(text).toBe(byHand(value));
      expect(plain).toEqual(JSON.parse(text));
    }),
  );
});

function byHand(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(byHand).join(',')}]`;
  const members = new Map(Object.entries(value));
  return `{${[...members.keys()]
    .sort()
    .map((name) => `${JSON.stringify(name)}:${byHand(members.get(name))}`)
    .join(',')}}`;
}
