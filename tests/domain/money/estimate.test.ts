import { expect, test } from 'vitest';
import { estimateSchema, reconLineSchema } from '../../../src/domain/money/estimate.ts';

const fits = (low: number | undefined, likely: number, high: number | undefined) =>
  estimateSchema.safeParse({ likely, ...(low !== undefined && { low }), ...(high !== undefined && { high }) }).success;

test('low, likely and high stand in their order, and may be the same', () => {
  expect(fits(100, 200, 300)).toBe(true);
  expect(fits(200, 200, 200)).toBe(true);
  expect(fits(201, 200, 300)).toBe(false);
  expect(fits(100, 301, 300)).toBe(false);
  expect(fits(300, 200, 100)).toBe(false);
});

test('an end that is left out sets no limit, and the other one still does', () => {
  expect(fits(undefined, 200, undefined)).toBe(true);
  expect(fits(undefined, 200, 300)).toBe(true);
  expect(fits(undefined, 301, 300)).toBe(false);
  expect(fits(100, 200, undefined)).toBe(true);
  expect(fits(201, 200, undefined)).toBe(false);
});

test('the likely figure can’t be left out, nor be below zero, and a line of recon needs a name', () => {
  expect(estimateSchema.safeParse({ low: 100, high: 300 }).success).toBe(false);
  expect(fits(undefined, -1, undefined)).toBe(false);
  const line = (label: string) => reconLineSchema.safeParse({ label, amount: { likely: 1 } });
  expect(line('Tires').data).toMatchObject({ chance: 1_000_000 });
  expect(line('').success).toBe(false);
  expect(line('x'.repeat(81)).success).toBe(false);
});
