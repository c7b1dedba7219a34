import { describe, expect, test } from 'vitest';
import { HELD_OUT, inventedPage, judgeFamilies, LEARNED } from '../../scripts/reader/laboratory/laboratory.ts';
import type { Judged } from '../../scripts/reader/score-lots.ts';
import { readVin } from '../../src/domain/vin/read-vin.ts';

/** A sample; `npm run scores -- reader` reads hundreds. */
const PAGES = Number(process.env.PAGES ?? 12);

/** The part of what there was to read that was read, and of what was said the part that is not so. */
function shares(judged: readonly Judged[]) {
  const count = (...verdicts: readonly string[]) => judged.filter(({ verdict }) => verdicts.includes(verdict)).length;
  return {
    found: count('right') / count('right', 'wrong', 'missed', 'open'),
    notRight: count('wrong', 'tempted') / count('right', 'wrong', 'tempted'),
  };
}

describe('pages of families are read', () => {
  test('that the reader has learned from', async () => {
    const { found, notRight } = shares(await judgeFamilies(LEARNED, PAGES));
    expect(found).toBeGreaterThan(0.95);
    expect(notRight).toBeLessThan(0.01);
  }, 30_000);

  test('that are held out, from which no rule is made', async () => {
    const { found, notRight } = shares(await judgeFamilies(HELD_OUT, PAGES));
    expect(found).toBeGreaterThan(0.85);
    expect(notRight).toBeLessThan(0.04);
  }, 30_000);
});

test('what is held out shares nothing with what is learned', () => {
  const named = ({ stock, voices, layouts, lists, distractors, frameworks }: typeof LEARNED) =>
    [
      ...stock.cars.flat(),
      ...stock.houses.flatMap(({ name, sale }) => [name, sale]),
      ...stock.towns,
      ...stock.sellers,
      ...voices.flatMap(({ labels }) => Object.values(labels).flat()),
      ...[layouts, lists, distractors, frameworks].flatMap((one) => Object.keys(one)),
    ].map((word) => word.toLowerCase());
  const learned = new Set(named(LEARNED));
  const shared = named(HELD_OUT).filter((word) => learned.has(word));
  expect(new Set(shared)).toEqual(new Set(['nothing', 'plain']));
});

test('a page of the laboratory comes out the same each time, of lots with right VINs', () => {
  for (const number of [1, 2, 3]) {
    const page = inventedPage(LEARNED, number);
    expect(inventedPage(LEARNED, number)).toEqual(page);
    for (const { vin } of page.expected.lots) expect(readVin(String(vin)).ok).toBe(true);
  }
});
