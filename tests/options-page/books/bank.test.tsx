// @vitest-environment jsdom
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { value } from '../../store/open-test-store.ts';
import { demoBooksPages, has, lots, press, said, sees, show, store } from './demo-books-page.tsx';

demoBooksPages();

const type = (box: HTMLTextAreaElement, text: string) =>
  act(() => {
    box.value = text;
    box.dispatchEvent(new Event('input', { bubbles: true }));
  });
const paste = async (text: string) => {
  const box = document.querySelector('textarea');
  if (box === null) throw new Error('there is no box for rows');
  type(box, text);
  press('Preview rows');
  await sees(has('The pasted rows'));
};

test('a statement is read once, its sure lines are matched, the rest stands on both sides, and each step can be undone', async () => {
  await show('bank');
  await sees(has('No statement has been read yet'));
  const [car] = lots.filter(({ sale }) => sale?.result?.result.ended === 'won');
  if (car === undefined) throw new Error('the demo has no win');
  const pay = (date: string, amount: number, number: string) => ({
    kind: 'payment-booked' as const,
    date: date as LocalDate,
    payee: 'Bluff Haulers',
    document: { number },
    lines: [{ lot: car.id, cents: cents(amount) }],
  });
  const [paid] = value(await store.book(pay('2026-11-16', 65_001, '8801'), pay('2026-11-17', 12_302, '8802')));
  const rows = [
    'Date,Description,Check,Amount',
    '11/18/2026,CHECK,8801,-650.01',
    '11/19/2026,WIRE FEE,,-25.00',
    '11/20/2026,CHECK,8807,-77.77',
  ].join('\n');
  await paste(rows);
  // What will be added is seen before it is.
  expect([...document.querySelectorAll('tbody tr')].at(-1)?.textContent).toBe('Nov 20, 2026CHECK−$77.77');
  press('Add 3 lines');
  await sees(has('(3 unmatched)'));
  expect(document.querySelector('details')?.open).toBe(false);
  expect(document.body.textContent).toContain('In the bank, not in the books: 2');
  expect(document.body.textContent).toContain('no. 8802');
  press('Record 1 checked match');
  await sees(has('(2 unmatched)'));
  await paste(rows);
  await sees(has('3 lines were read before'));
  press('Another statement');
  const fee = document.querySelector<HTMLInputElement>('[aria-label="Choose WIRE FEE"]');
  act(() => fee?.click());
  press('Leave out');
  await sees(has('(1 unmatched)'));
  expect(said.map(({ sentence }) => sentence)).toEqual([
    '3 lines read from The pasted rows.',
    '1 match recorded.',
    '1 line left out.',
  ]);
  // A payment that is undone is no longer at the bank.
  value(await store.undo(paid?.id ?? ('' as never)));
  await sees(has('In the bank, not in the books: 2'));
});
