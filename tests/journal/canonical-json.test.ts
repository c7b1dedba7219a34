import { expect, test } from 'vitest';
import { canonicalJson } from '../../src/journal/canonical-json.ts';

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
