// @vitest-environment jsdom
import { act } from 'preact/test-utils';
import { expect, test, vi } from 'vitest';
import { venueSchema } from '../../../src/domain/setup/venue.ts';
import { box, openPage, press, setupPages, type } from './setup-page.tsx';

setupPages();

const VENUE = {
  zone: 'America/Phoenix',
  feeScheduleIds: [],
  increments: [{ fromCents: 0, stepCents: 5000 }],
  transport: { kind: 'flat', cents: 0 },
};
const riverbend = venueSchema.parse({ ...VENUE, id: 'riverbend', name: 'Riverbend' });
const saltgrass = venueSchema.parse({ ...VENUE, id: 'saltgrass', name: 'Saltgrass' });
const summaries = () => [...document.querySelectorAll('.entry-fold > summary')].map((each) => each.textContent ?? '');
const open = (title: string) =>
  act(async () => {
    for (const fold of document.querySelectorAll<HTMLDetailsElement>('details'))
      if (fold.querySelector('summary')?.textContent?.includes(title)) fold.open = true;
  });
const choose = (label: string, value: string) =>
  act(async () => {
    const found = [...document.querySelectorAll('label')].find((each) => each.textContent?.trim() === label);
    const select = found && document.getElementById(found.htmlFor);
    if (!(select instanceof HTMLSelectElement)) throw new Error(`nothing to choose “${label}” from`);
    select.value = value;
    select.dispatchEvent(new Event('change', { bubbles: true }));
  });

test('a venue’s deadline is set from its terms, shows when it would end, and is removed again', async () => {
  vi.useFakeTimers({ now: Date.parse('2026-11-24T10:00-07:00'), toFake: ['Date'] });
  const { page } = await openPage('after', { venues: [riverbend] });
  expect(summaries()[0]).toContain('no deadlines yet');
  await press('Add its deadlines');
  await press('Set a deadline: Pay by');
  const pay = () => page.setup.venues[0]?.afterSale?.steps.pay;
  expect(pay()).toMatchObject({ amount: 1, unit: 'business-days', from: 'sale', cutOff: '17:00' });
  await open('Pay by');
  await type('How many', '2');
  expect(pay()).toMatchObject({ amount: 2 });
  // Tuesday before Thanksgiving: Wednesday, Friday.
  expect(document.body.textContent).toContain('it would end Fri Nov 27, 5:00 PM there');
  await choose('Of what', 'hours');
  expect(pay()).toMatchObject({ amount: 2, unit: 'hours' });
  expect(document.body.textContent).toContain('it would end Tue Nov 24, 12:00 PM there');
  await press('Remove: Pay by');
  expect(pay()).toBeUndefined();
  expect(page.said.at(-1)).toBe('Riverbend: after-sale terms saved.');
  vi.useRealTimers();
});

test('claims and answers are set apart, and the terms of one venue are a start for the next', async () => {
  const { page } = await openPage('after', { venues: [riverbend, saltgrass] });
  await open('Riverbend');
  await press('Add its deadlines');
  await press('Set a deadline: Undisclosed defect');
  await press('Set a deadline: Answer: Undisclosed defect');
  expect(page.setup.venues[0]?.afterSale?.disputes['hidden-defect']).toMatchObject({
    claim: { from: 'delivery' },
    answer: { from: 'notice' },
  });
  expect(summaries()[0]).toContain('2 deadlines');
  await open('Saltgrass');
  await press('Copy from Riverbend');
  expect(page.setup.venues[1]?.afterSale).toEqual(page.setup.venues[0]?.afterSale);
  await press('Remove: Answer: Undisclosed defect');
  expect(page.setup.venues[0]?.afterSale?.disputes['hidden-defect']).not.toHaveProperty('answer');
});

test('a figure that is no deadline is held back beside its box', async () => {
  const { page } = await openPage('after', { venues: [riverbend] });
  await press('Add its deadlines');
  await press('Set a deadline: Title by');
  await open('Title by');
  const saves = page.saved.length;
  await type('How many', 'soon');
  expect(page.saved).toHaveLength(saves);
  expect(box('How many').getAttribute('aria-invalid')).toBe('true');
});

test('the reminders before a deadline are set in hours or days, a day and three hours to begin with', async () => {
  const { page } = await openPage('alerts');
  expect(box('Hours before').value).toBe('24 h, 3 h');
  await type('Hours before', '2 days, 6');
  expect(page.setup.alerts.deadlineLeadMinutes).toEqual([2880, 360]);
  expect(page.said.at(-1)).toBe('Reminders 48 h, 6 h before a deadline.');
});
