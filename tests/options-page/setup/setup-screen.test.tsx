// @vitest-environment jsdom
import { act } from 'preact/test-utils';
import { describe, expect, test } from 'vitest';
import { box, faults, openPage, press, setupPages, type } from './setup-page.tsx';

setupPages();

describe('the Setup screen', () => {
  test('keeps a change at once, one section an entry, and says so', async () => {
    const { page } = await openPage('costs');
    await type('Pack', '250');
    expect(page.saved).toEqual([{ costs: { ...page.setup.costs, packCents: 25_000 } }]);
    expect(page.said).toEqual(['Pack: $250.']);
  });

  test('keeps nothing when the box is left as it was', async () => {
    const { page } = await openPage('costs');
    await type('Pack', '0');
    expect(page.saved).toEqual([]);
  });

  test('holds a broken rule back beside its row, through a look at another part, until it is mended', async () => {
    const { page, show } = await openPage('venues');
    await press('Add a venue');
    await type('Name', 'Riverbend');
    await press('Add an increment from a higher price');
    const saves = page.saved.length;
    await type('Increment 2, from', '0');
    expect(page.saved).toHaveLength(saves);
    expect(faults()).toEqual([expect.stringMatching(/Starts at \$0, like the bid increment before it/)]);
    show('rules');
    show('venues');
    expect(box('Increment 2, from').value).toBe('0');
    await type('Increment 2, from', '5000');
    expect(page.saved).toHaveLength(saves + 1);
    expect(page.setup.venues[0]?.increments[1]?.fromCents).toBe(500_000);
    expect(faults()).toEqual([]);
  });

  test('keeps a new venue only once it has a name, and forgets it when given up', async () => {
    const { page } = await openPage('venues');
    await press('Add a venue');
    expect(page.saved).toEqual([]);
    expect(document.activeElement).toBe(box('Name'));
    await press('Go back to the saved version');
    expect(document.querySelector('.entry-fold')).toBeNull();
  });

  test('keeps on the screen what the store refused, and tries again', async () => {
    const { page } = await openPage('costs');
    page.refuses = true;
    await type('Overhead per car', '100');
    expect(page.said).toEqual(['The disk is full. Make room and try again.']);
    expect(box('Overhead per car').value).toBe('100');
    page.refuses = false;
    await press('Try again');
    expect(page.setup.costs.overheadCents).toBe(10_000);
    expect(document.querySelector('[aria-label="Not saved yet"]')).toBeNull();
  });

  test('takes a removed fee schedule off its venues in the same entry', async () => {
    const { page, show } = await openPage('fees');
    await press('Add a fee schedule');
    await type('Name of the schedule', 'Riverbend fees');
    show('venues');
    await press('Add a venue');
    await type('Name', 'Riverbend');
    await act(async () => box('Riverbend fees').click());
    expect(page.setup.venues[0]?.feeScheduleIds).toHaveLength(1);
    show('fees');
    await press('Remove Riverbend fees');
    expect(Object.keys(page.saved.at(-1) ?? {}).toSorted()).toEqual(['feeSchedules', 'venues']);
    expect(page.setup.venues[0]?.feeScheduleIds).toEqual([]);
  });

  test('takes a pasted price list only when asked, in place of the old bands', async () => {
    const { page } = await openPage('fees');
    await press('Add a fee schedule');
    await type('Name of the schedule', 'Riverbend fees');
    await press('Paste fee bands');
    await act(async () => {
      const text = document.querySelector('textarea');
      if (text === null) throw new Error('no box to paste into');
      text.value = '0 – 499.99 $100\n500 and up 2%';
      text.dispatchEvent(new InputEvent('input', { bubbles: true }));
    });
    expect(page.setup.feeSchedules[0]?.editions[0]?.tables[0]?.bands).toHaveLength(1);
    await press('Replace the old bands with these 2');
    expect(page.setup.feeSchedules[0]?.editions[0]?.tables[0]?.bands).toEqual([
      { fromCents: 0, flatCents: 10_000, ratePpm: 0 },
      { fromCents: 50_000, flatCents: 0, ratePpm: 20_000 },
    ]);
  });

  test('turns the floor plan off and on again without losing its terms', async () => {
    const { page } = await openPage('holding');
    await act(async () => box('A lender pays for cars until they sell').click());
    await type('Interest per year', '8.625');
    await act(async () => box('A lender pays for cars until they sell').click());
    expect(page.setup.carrying.floorPlan).toBeUndefined();
    await act(async () => box('A lender pays for cars until they sell').click());
    expect(page.setup.carrying.floorPlan?.annualRatePpm).toBe(86_250);
  });

  test('goes on reading at the head of a part that was opened', async () => {
    const { show } = await openPage('store');
    expect(document.activeElement).toBe(document.body);
    show('costs');
    expect(document.activeElement).toBe(document.querySelector('h1'));
    expect(document.activeElement?.textContent).toBe('Costs');
  });

  test('says that there is no such part', async () => {
    await openPage('nonsense');
    expect(document.body.textContent).toMatch(/no part “nonsense”/);
  });
});
