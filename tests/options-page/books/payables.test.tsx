// @vitest-environment jsdom
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { value } from '../../store/open-test-store.ts';
import { demoBooksPages, has, lots, press, rowsOf, said, sees, show, store } from './demo-books-page.tsx';

demoBooksPages();

test('one check pays two bills of a hauler for several cars, and both are gone from what is owed', async () => {
  await show('');
  await sees(() => rowsOf('.sort-table').length === 5);
  const [first, second] = lots.filter(({ sale }) => sale?.result?.result.ended === 'won');
  if (first === undefined || second === undefined) throw new Error('the demo has too few wins');
  const line = (lot: typeof first, amount: number) => ({
    lot: lot.id,
    cost: 'transport' as const,
    label: 'Truck',
    cents: cents(amount),
  });
  const bill = { kind: 'costs-booked' as const, paid: 'owed' as const, payee: 'Bluff Haulers' };
  const [one] = value(
    await store.book(
      {
        ...bill,
        date: '2026-10-02' as LocalDate,
        due: '2026-10-20' as LocalDate,
        document: { number: 'B-7' },
        lines: [line(first, 40_001), line(second, 40_000)],
      },
      {
        ...bill,
        date: '2026-11-20' as LocalDate,
        document: { number: 'B-9' },
        lines: [line(second, 12_500)],
      },
    ),
  );
  await show('payables');
  await sees(has('Bluff Haulers'));
  expect(document.body.textContent).toContain('No terms yet');
  press('Bluff Haulers');
  await sees(has('Open bills of Bluff Haulers'));
  expect(document.body.textContent).toContain('36 days past due');
  for (const box of document.querySelectorAll<HTMLInputElement>('[aria-label^="Pay bill B-"]')) act(() => box.click());
  press('Record $925.01 for 2 bills');
  await sees(() => said.some(({ sentence }) => sentence === '$925.01 paid to Bluff Haulers for 2 bills.'));
  const { payments } = await store.books();
  const paid = payments.filter(({ payee }) => payee === 'Bluff Haulers');
  expect(paid.map((part) => part.cents).sort()).toEqual([12_500, 40_000, 40_001]);
  expect(paid.map((part) => part.bill === one?.id)).toEqual([true, true, false]);
  await sees(() => document.body.textContent?.includes('Bluff Haulers') === false);
});
