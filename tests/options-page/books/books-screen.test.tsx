// @vitest-environment jsdom

import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import { readRoute } from '../../../options-page/shell/route.ts';
import { wholeSetup } from '../../../src/domain/setup/starting-setup.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { value } from '../../store/open-test-store.ts';
import { button, demoBooksPages, has, lots, press, rowsOf, said, sees, show, store } from './demo-books-page.tsx';

demoBooksPages();

const checkBox = (words: string) => {
  const label = [...document.querySelectorAll('label')].find((each) => each.textContent?.startsWith(words));
  const box = label?.querySelector('input') ?? document.getElementById(label?.htmlFor ?? '');
  if (box === null || box === undefined) throw new Error(`no box “${words}”`);
  act(() => box.click());
};

test('the folders of the demo are listed with their totals, sorted by a press, and narrowed down', async () => {
  await show('');
  await sees(() => rowsOf('.sort-table').length === 5);
  await sees(has('amount differs'));
  const won = lots.filter(({ sale }) => sale?.result?.result.ended === 'won');
  expect(rowsOf('.sort-table')).toHaveLength(won.length);
  press('Recorded');
  const booked = rowsOf('.sort-table').map((row) =>
    Number((row.children[4]?.textContent ?? '').replace(/[^\d.]/g, '')),
  );
  expect(booked).toEqual([...booked].sort((a, b) => b - a));
  expect(document.querySelector('[aria-sort]')?.textContent).toMatch(/Recorded/);
  const wanted = [...document.querySelectorAll('select')].at(-1);
  act(() => {
    if (wanted) wanted.value = 'sold';
    wanted?.dispatchEvent(new Event('change', { bubbles: true }));
  });
  expect(rowsOf('.sort-table')).toHaveLength(2);
});

test('an invented invoice is matched, its wrong fee pointed at, booked, and known when it comes again', async () => {
  await show('');
  await sees(() => rowsOf('.sort-table').length === 5);
  await sees(has('$'));
  const waiting = (await store.allLots()).filter(({ sale }) => sale?.result?.result.ended === 'won');
  const books = await store.books();
  const open = waiting.find(({ id }) => !books.costs.some(({ lot }) => lot === id));
  await show('invoices');
  const venue = document.querySelector('select');
  act(() => {
    if (venue) venue.value = open?.facts.venueId ?? '';
    venue?.dispatchEvent(new Event('change', { bubbles: true }));
  });
  press('Try a made-up invoice');
  const text = document.querySelector('textarea')?.value ?? '';
  press('Preview rows');
  await sees(has('$25 more than the fee schedule: “'));
  expect(has('Same as row')()).toBe(true);
  expect(has('“see note” is not an amount')()).toBe(true);
  expect(has('No match: 1 car')()).toBe(true);
  expect(has('This payment was marked as paid under To do')()).toBe(true);
  const before = (await store.books()).costs.length;
  const ticked = document.querySelectorAll('.invoice-lines input:checked').length;
  press(`Record ${ticked} checked`);
  await sees(() => said.some(({ sentence }) => sentence.startsWith(`${ticked} lines recorded`)));
  const after = await store.books();
  expect(after.costs.length + after.payments.length).toBeGreaterThan(before);
  expect(after.mappings.get(open?.facts.venueId ?? '')).toMatchObject({ VIN: 'vin', Amount: 'amount' });

  // The same file again: its columns are known, what was booked is known, and nothing is ticked.
  await sees(() => document.querySelector('textarea') !== null);
  const box = document.querySelector('textarea');
  act(() => {
    if (box) box.value = text;
    box?.dispatchEvent(new Event('input', { bubbles: true }));
  });
  press('Preview rows');
  await sees(has('Same columns as this venue’s last invoice'));
  await sees(() => document.querySelectorAll('.invoice-lines .tag').length > 0);
  const tags = [...document.querySelectorAll('.invoice-lines .tag')].map((tag) => tag.textContent);
  expect(tags.filter((words) => words === 'already recorded')).toHaveLength(ticked);
  expect(document.querySelectorAll('.invoice-lines input:checked')).toHaveLength(0);
});

test('what an invoice leaves open is said on its line: money or a charge, and what a fee stands for, which is known the next time', async () => {
  await show('');
  await sees(() => rowsOf('.sort-table').length === 5);
  const books = await store.books();
  const open = (await store.allLots()).find(
    ({ id, sale, facts }) =>
      sale?.result?.result.ended === 'won' && facts.vin !== undefined && !books.costs.some(({ lot }) => lot === id),
  );
  const paste = async (rows: string) => {
    await sees(() => document.querySelector('textarea') !== null);
    const box = document.querySelector('textarea');
    act(() => {
      if (box) box.value = `Date,VIN,Description,Amount\n${rows}`;
      box?.dispatchEvent(new Event('input', { bubbles: true }));
    });
    press('Preview rows');
    await sees(() => document.querySelector('.invoice-lines') !== null);
  };
  const line = (words: string, label: string) =>
    [...document.querySelectorAll<HTMLInputElement>('.invoice-lines input')].find((box) =>
      box.getAttribute('aria-label')?.startsWith(`${words} ${label},`),
    );
  await show('invoices');
  const venue = document.querySelector('select');
  act(() => {
    if (venue) venue.value = open?.facts.venueId ?? '';
    venue?.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await paste(`11/24/2026,${open?.facts.vin},Premium to buyer,9999\n11/24/2026,${open?.facts.vin},Wire,30`);
  expect(line('Record', 'Wire')?.disabled).toBe(true);
  const turn = document.querySelector<HTMLElement>('[aria-label^="Change to a payment: Wire"]');
  act(() => turn?.click());
  expect(line('Record', 'Wire')?.disabled).toBe(false);

  const link = () => document.querySelector<HTMLSelectElement>('[aria-label^="Same as which expected line: Premium"]');
  act(() => {
    const choice = link();
    if (choice) choice.value = 'fee-0';
    choice?.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await sees(has('more than the fee schedule'));
  act(() => line('Record', 'Premium to buyer')?.click());
  press('Record');
  await sees(() => said.some(({ sentence }) => sentence.includes('recorded from')));
  const after = await store.books();
  expect(after.costs.find(({ label }) => label === 'Premium to buyer')).toMatchObject({
    against: 'fee-0',
    cost: 'fee',
  });

  await paste(`11/24/2026,${open?.facts.vin},Premium to buyer,9999`);
  await sees(has('already recorded'));
  expect(line('Record', 'Premium to buyer')?.checked).toBe(false);
});

test('a folder explains its lines, takes a payment of a part, and gives it back', async () => {
  const { costs, outcomes } = await store.books();
  const lot = costs.find((cost) => !outcomes.has(cost.lot))?.lot ?? '';
  await show('');
  await sees(() => rowsOf('.sort-table').length === 5);
  await show(lot);
  await sees(has('$25 more than the fee schedule'));
  expect(has('Missing:')()).toBe(true);
  const form = [...document.querySelectorAll('details')].find((each) => each.textContent?.startsWith('Payment'));
  const amount = form?.querySelector('input');
  act(() => {
    if (amount) amount.value = '10';
    amount?.dispatchEvent(new Event('input', { bubbles: true }));
  });
  act(() => void amount?.dispatchEvent(new FocusEvent('blur')));
  const owed = (await store.books()).payments.length;
  press('Record the payment');
  await sees(() => said.some(({ sentence }) => sentence.startsWith('Recorded.')));
  expect((await store.books()).payments.length).toBe(owed + 1);
  const undo = said.at(-1)?.undo;
  if (undo !== undefined) value(await store.undo(undo));
  expect((await store.books()).payments.length).toBe(owed);
});

test('the closed month stays, its late bill is a correction in the open one, and the review counts what was won and lost', async () => {
  await show('month', '2026-10');
  await sees(has('Closed by The bookkeeper'));
  await show('month', '2026-11');
  await sees(has('corrects October 2026'));
  expect(document.querySelector('tr.total')?.textContent).toMatch(/\$0\.00$/);
  // November is not over, and something in it is open: one press does nothing.
  await sees(has('Won, and not billed at the end of the month: '));
  expect(button('Close November 2026').disabled).toBe(true);
  checkBox('Close it before it ends');
  expect(button('Close November 2026').disabled).toBe(true);
  checkBox('Close it with ');
  await sees(() => !button('Close November 2026').disabled);
  press('Close November 2026');
  await sees(() => said.some(({ sentence }) => sentence === 'November 2026 is closed.'));
  await sees(has('Its figures are locked.'));
  await sees(has('Accrued: won, not billed yet'));
  press('Reopen November 2026');
  expect(has('no longer locked and may change')()).toBe(true);
  press('Reopen it');
  await sees(has('Open. '));
  expect(has('Accrued: won, not billed yet')()).toBe(false);
  await show('review');
  await sees(has('Gross on cars sold'));
  const won = lots.filter(({ sale }) => sale?.result?.result.ended === 'won').length;
  const lost = lots.filter(({ sale }) => sale?.result?.result.ended === 'lost').length;
  expect(document.querySelector('.review-figures')?.textContent).toContain(`${won} of ${won + lost}`);
});

test('one bill is shared among cars to the cent', async () => {
  await show('share');
  await sees(() => rowsOf('.ledger').length === 6);
  const amount = [...document.querySelectorAll('label')].find((each) => each.textContent === 'Amount');
  const box = document.getElementById(amount?.htmlFor ?? '') as HTMLInputElement | null;
  act(() => {
    if (box) box.value = '1,000';
    box?.dispatchEvent(new Event('input', { bubbles: true }));
  });
  act(() => void box?.dispatchEvent(new FocusEvent('blur')));
  for (const i of [0, 1, 2])
    act(() => document.querySelectorAll<HTMLInputElement>('.ledger input[type=checkbox]')[i]?.click());
  await sees(has('$333.34'));
  press('Record the shares');
  await sees(() => said.some(({ sentence }) => sentence === '$1,000 split among 3 cars.'));
  const shared = (await store.books()).costs.slice(-3).map(({ cents }) => cents);
  expect(shared).toEqual([33_334, 33_333, 33_333]);
});

test('the Monday list names what is open in the demo, and each line leads to where it is settled', async () => {
  await show('monday');
  await sees(has('Results missing'));
  const lines = [...document.querySelectorAll<HTMLAnchorElement>('.monday-lines a')];
  expect(lines.length).toBeGreaterThan(0);
  for (const { hash } of lines) expect(readRoute(hash).screen).not.toBe('unknown');
  expect(document.body.textContent).toContain(`${lines.length} things to settle.`);
});

test('a list of sold cars is matched to the folders; what fits no car is named, and only ticked rows are recorded', async () => {
  const setup = wholeSetup(await store.setup(), zone('America/Boise'));
  const { folders } = foldersOf(lots, await store.books(), new Map(), setup, '2026-11-25' as LocalDate);
  const waiting = folders.filter(({ stage }) => stage === 'in-stock');
  const vins = waiting.map(({ facts }) => facts.vin);
  await show('sold');
  const box = document.querySelector('textarea');
  if (box === null) throw new Error('no box for the rows');
  act(() => {
    box.value = `VIN\tSold date\tPrice\n${vins[0]}\t2026-11-24\t$24,500\n1LX3H4C21M0100000\t2026-11-24\t$20,000\n${vins[1]}\t2026-11-24\tsoon\n`;
    box.dispatchEvent(new Event('input', { bubbles: true }));
  });
  press('Preview rows');
  await sees(has('3 rows: 1 car found, 1 without a car, 1 not readable.'));
  press('Record 1 sale');
  await sees(has('2 rows were not recorded'));
  const { outcomes } = await store.books();
  expect(outcomes.get(waiting[0]?.lot as never)).toMatchObject({ priceCents: 2_450_000, buyer: 'retail' });
});
