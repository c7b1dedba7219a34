// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { DisputeScreen } from '../../../options-page/disputes/dispute-screen.tsx';
import { EarlierLives } from '../../../options-page/lot/sale/earlier-lives.tsx';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { phoenix } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';
import { SETUP, wonLot } from '../books/both-places.ts';
import { pageText, sees, storeWorkspace } from '../store-workspace.ts';

beforeEach(freshBrowser);
afterEach(() => act(() => render(null, document.body)));

function boxOf(label: string): HTMLElement {
  const found = [...document.querySelectorAll('label')].find((each) => each.textContent?.trim() === label);
  const box = found && document.getElementById(found.htmlFor);
  if (!box) throw new Error(`no box “${label}”`);
  return box;
}
const choose = (label: string, value: string) =>
  act(async () => {
    const select = boxOf(label) as HTMLSelectElement;
    select.value = value;
    select.dispatchEvent(new Event('change', { bubbles: true }));
  });
const write = (label: string, text: string) =>
  act(async () => {
    const box = boxOf(label) as HTMLTextAreaElement;
    box.value = text;
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
const press = (words: string) =>
  act(async () => {
    [...document.querySelectorAll('button')].find((each) => each.textContent === words)?.click();
    await new Promise((resolve) => setTimeout(resolve, 20));
  });

test('a car that is offered again is linked to its new lot, which tells what was learned the first time', async () => {
  const store = await openTestStore({ channel: false });
  const first = await wonLot(store);
  // Nobody has the VIN of the first; the new lot is found by its name.
  const again = at(value(await store.addLots('typed', [{ facts: { make: 'Larkspur', lotNumber: '77' } }])).lots, 0);
  const words = { words: 'It leaks.', at: phoenix('2026-12-02T09:00'), needs: [] };
  const opened = { side: 'ours' as const, reason: 'hidden-defect' as const, ...words };
  const subject = subjectOfLot(first);
  // The new lot came in after the sale.
  const won = { ended: 'won' as const, hammerCents: 1_240_000 as never };
  value(await store.noteResult(first, { result: won, at: phoenix('2020-11-24T10:00') }));
  const dispute = at(value(await store.append([{ subject, happening: { kind: 'dispute-opened', opened } }])), 0).id;
  const lots = await store.allLots();
  const workspace = storeWorkspace(store, lots, SETUP, []);
  const show = (screen: preact.ComponentChild) =>
    act(() => render(<WorkspaceContext.Provider value={workspace}>{screen}</WorkspaceContext.Provider>, document.body));
  show(<DisputeScreen id={dispute} />);
  await sees(() => pageText().includes('Close the dispute'));
  await choose('Outcome', 'sold-again');
  await choose('Offered again as', again);
  await write('What to remember if this car is offered again', 'The rear seal is gone.');
  await press('Close the dispute');
  await sees(() => pageText().includes('Offered again: Larkspur'));
  expect((await store.lot(first))?.after?.disputes[0]?.outcome).toMatchObject({
    ended: 'sold-again',
    newLot: again,
    words: 'The rear seal is gone.',
  });

  const newLot = lots.find(({ id }) => id === again);
  if (newLot === undefined) throw new Error('the new lot is gone');
  show(<EarlierLives lot={newLot} />);
  await sees(() => pageText().includes('This car was at a sale before'));
  expect(pageText()).toContain('undisclosed defect, Sold again. The rear seal is gone.');
  store.close();
});
