// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { openPage, press, setupPages, type } from './setup-page.tsx';

setupPages();

test('a template is made line by line, and nothing half made is kept', async () => {
  const { page } = await openPage('recon', {});
  const kept = () => page.setup.reconTemplates;
  expect(document.body.textContent).toContain('No templates yet.');
  await press('Add a template');
  expect(kept()).toBeUndefined();
  await type('Name', 'Cargo van');
  await type('Models in this class', ' Parcelman , Loadmate,');
  expect(kept()).toMatchObject([{ name: 'Cargo van', models: ['Parcelman', 'Loadmate'], lines: [] }]);
  await press('Add a recon line');
  expect(kept()?.[0]?.lines).toEqual([]);
  await type('Line 1, what', 'Tires');
  await type('Line 1, likely', '620');
  await type('Line 1, chance it is needed', '60');
  const tires = { label: 'Tires', amount: { likely: 620_00 }, chance: 600_000 };
  expect(kept()?.[0]?.lines).toEqual([tires]);
  expect(document.querySelector('.entry-fold > summary')?.textContent).toContain('1 line, $372');
  await type('Line 1, low', '700');
  // The line that breaks the rule waits, and says why.
  expect(document.querySelector('.cell-faults')?.textContent).toContain('Low must not be above likely');
  expect(kept()?.[0]?.lines).toEqual([tires]);
  await type('Line 1, low', '500');
  expect(kept()?.[0]?.lines).toEqual([{ ...tires, amount: { low: 500_00, likely: 620_00 } }]);
  await press('Remove Tires');
  expect(kept()?.[0]?.lines).toEqual([]);
  await press('Remove this template: Cargo van');
  expect(kept()).toEqual([]);
  expect(page.said.at(-1)).toBe('Removed the template Cargo van. Lots keep the lines that it gave them.');
});
