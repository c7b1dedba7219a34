import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { titleBrandSchema } from '../../../src/domain/setup/money-rules.ts';
import { STARTING_TITLES } from '../../../src/domain/setup/starting-titles.ts';

test('the titles to start from are valid, distinct, and begin with a clean one', () => {
  expect(z.array(titleBrandSchema).parse([...STARTING_TITLES])).toEqual(STARTING_TITLES);
  expect(new Set(STARTING_TITLES.map(({ id }) => id)).size).toBe(STARTING_TITLES.length);
  expect(STARTING_TITLES[0]).toEqual({ id: 'clean', name: 'Clean', keepsPpm: 1_000_000, floorable: true });
});

test('no brand is floorable before the lender says so, and each says which paper it needs', () => {
  for (const title of STARTING_TITLES.slice(1)) {
    expect(title.floorable).toBe(false);
    expect(title.paper).not.toBe('');
  }
});

test('a figure for what a brand leaves is never passed off as more than a starting point', () => {
  for (const title of STARTING_TITLES.filter(({ keepsPpm }) => keepsPpm > 0 && keepsPpm < 1_000_000)) {
    expect(title.unconfirmed).toBe(true);
  }
});
