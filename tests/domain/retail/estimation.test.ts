import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { DEFAULT_ESTIMATION, estimationSchema } from '../../../src/domain/retail/estimation.ts';
import { setupSectionsSchema } from '../../../src/domain/setup/setup.ts';

test('every figure of the section has a default, and each part of it alone is enough', () => {
  expect(estimationSchema.parse({})).toEqual(DEFAULT_ESTIMATION);
  expect(estimationSchema.parse({ doubt: { statedPpm: 200_000 } }).doubt.seenPpm).toBe(
    DEFAULT_ESTIMATION.doubt.seenPpm,
  );
});

test('a change to another section does not bring the defaults back', () => {
  const change = z.partial(setupSectionsSchema).parse({ costs: {} });
  expect('estimation' in change).toBe(false);
});

test('a spread or a ratio of nothing is refused', () => {
  for (const key of ['carSpreadPpm', 'guessSpreadPpm', 'askingRatioPpm', 'carSpreadWeight']) {
    expect(estimationSchema.safeParse({ [key]: 0 }).success).toBe(false);
  }
});
