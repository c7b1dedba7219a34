import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { ReconLine } from '../../../src/domain/money/estimate.ts';
import { PPM, ppm } from '../../../src/domain/money/rate.ts';
import { offerRecon, templateSum } from '../../../src/views/lots/recon-offers.ts';

const line = (label: string, dollars: number): ReconLine => ({
  label,
  amount: { likely: cents(dollars * 100) },
  chance: ppm(PPM),
});
const template = { id: 'van', name: 'Cargo van', lines: [line('Tires', 600), line('Detail', 180)] };
const lot = (...recon: ReconLine[]) => ({ facts: recon.length === 0 ? {} : { recon } });

test('only lots that lack a line are changed, and what was entered is named and left', () => {
  const [bare, typed, whole] = [lot(), lot(line('Tires', 450)), lot(line('Tires', 600), line('Detail', 180))];
  const { changed, said } = offerRecon([bare, typed, whole], template);
  expect(changed).toEqual([
    { lot: bare, recon: template.lines },
    { lot: typed, recon: [line('Tires', 450), line('Detail', 180)] },
  ]);
  expect(said).toBe('2 lines added. 1 lot had all of them. Left as entered: Tires.');
});

test('with nothing to add it says so and changes nothing', () => {
  const { changed, said } = offerRecon([lot(...template.lines)], template);
  expect(changed).toEqual([]);
  expect(said).toBe('nothing to add, all its lines are there.');
});

test('the sum on the button is the average that the worksheet counts, chance and overrun included', () => {
  // (500 + 4 × 600 + 1300) ÷ 6 = 700, needed on half: $350.
  const unsure = { label: 'Tires', amount: { low: cents(500_00), likely: cents(600_00), high: cents(1300_00) } };
  expect(templateSum({ lines: [{ ...unsure, chance: ppm(500_000) }, line('Detail', 180)] })).toBe('$530');
});
