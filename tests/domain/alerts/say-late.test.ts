import { expect, test } from 'vitest';
import { atMost } from '../../../src/domain/alerts/say-late.ts';

test('of a long list only what is named is worked out, and the rest is counted', () => {
  const asked: number[] = [];
  const say = (item: number) => {
    asked.push(item);
    return `lot ${item}`;
  };
  const many = Array.from({ length: 2002 }, (_, i) => i);
  expect(atMost(2, many, say)).toEqual(['lot 0', 'lot 1', 'and 2,000 more']);
  expect(asked).toEqual([0, 1]);
  expect(atMost(2, [7], say)).toEqual(['lot 7']);
});
