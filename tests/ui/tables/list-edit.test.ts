import { expect, test } from 'vitest';
import { insertAt, removeAt, replaceAt, withField } from '../../../src/ui/tables/list-edit.ts';

test('editing a list never changes the list itself', () => {
  const list: readonly string[] = Object.freeze(['a', 'b', 'c']);
  expect(replaceAt(list, 1, 'x')).toEqual(['a', 'x', 'c']);
  expect(removeAt(list, 0)).toEqual(['b', 'c']);
  expect(insertAt(list, 3, 'd')).toEqual(['a', 'b', 'c', 'd']);
  expect(list).toEqual(['a', 'b', 'c']);
});

test('emptying an optional field leaves it out, so that a strict schema still takes the object', () => {
  const band: { from: number; most?: number } = { from: 0, most: 5 };
  expect(Object.keys(withField(band, 'most', undefined))).toEqual(['from']);
  expect(withField(band, 'most', 7)).toEqual({ from: 0, most: 7 });
});
