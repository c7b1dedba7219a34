// @vitest-environment jsdom
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { value } from '../../store/open-test-store.ts';
import { demoBooksPages, has, lots, press, rowsOf, said, sees, show, store } from './demo-books-page.tsx';

demoBooksPages();

test('undoing a bill for several cars says what it takes along; one line of it is undone or corrected alone', async () => {
  await show('');
  await sees(() => rowsOf('.sort-table').length === 5);
  const [first, second] = lots.filter(({ sale }) => sale?.result?.result.ended === 'won');
  if (first === undefined || second === undefined) throw new Error('the demo has too few wins');
  const line = (lot: typeof first) => ({
    lot: lot.id,
    cost: 'transport' as const,
    label: 'Truck',
    cents: cents(40_000),
  });
  const bill = { kind: 'costs-booked' as const, date: '2026-11-20' as LocalDate, paid: 'owed' as const };
  value(await store.book({ ...bill, payee: 'Bluff Haulers', lines: [line(first), line(second)] }));
  const before = await store.books();
  await show(first.id);
  await sees(has('Bluff Haulers'));
  const act2 = (label: string) => {
    const found = document.querySelector<HTMLElement>(`[aria-label^="${label}"]`);
    if (found === null) throw new Error(`nothing is named “${label}”`);
    act(() => found.click());
  };
  act2('Undo all 2 lines recorded with Truck');
  await sees(has('This also undoes Truck $400'));
  press('Cancel');
  act2('Undo Truck, $400');
  await sees(() => said.some(({ sentence }) => sentence === 'Truck, $400: undone.'));
  const after = await store.books();
  expect(after.costs).toHaveLength(before.costs.length - 1);
  expect(after.costs.filter(({ label }) => label === 'Truck').map(({ lot }) => lot)).toEqual([second.id]);

  await show(second.id);
  await sees(has('Bluff Haulers'));
  act2('Correct Truck, $400');
  const box = document.querySelector<HTMLInputElement>('fieldset .fields input');
  act(() => {
    if (box) box.value = '425';
    box?.dispatchEvent(new Event('input', { bubbles: true }));
    box?.dispatchEvent(new Event('change', { bubbles: true }));
    box?.dispatchEvent(new FocusEvent('blur'));
  });
  press('Save the correction');
  await sees(() => said.some(({ sentence }) => sentence === 'Truck corrected: $425.'));
  expect((await store.books()).costs.find(({ label }) => label === 'Truck')?.cents).toBe(42_500);
});
