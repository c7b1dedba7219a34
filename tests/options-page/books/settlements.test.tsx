// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { BooksScreen } from '../../../options-page/books/books-screen.tsx';
import { cents } from '../../../src/domain/money/cents.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { phoenix } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';
import { pageText, type Said, sees, storeWorkspace } from '../store-workspace.ts';
import { SETUP, wonLot } from './both-places.ts';

beforeEach(freshBrowser);
afterEach(() => act(() => render(null, document.body)));

test('the money by which a dispute ended is booked in the folder with one tap, and taken back with another', async () => {
  const store = await openTestStore({ channel: false });
  const lot = await wonLot(store);
  const subject = subjectOfLot(lot);
  const words = { words: 'It leaks.', at: phoenix('2026-12-02T09:00'), needs: [] };
  const opened = { side: 'ours' as const, reason: 'hidden-defect' as const, ...words };
  const dispute = at(value(await store.append([{ subject, happening: { kind: 'dispute-opened', opened } }])), 0).id;
  const outcome = { ended: 'price-adjusted' as const, at: phoenix('2026-12-09T12:00'), cents: cents(70_000) };
  value(await store.append([{ subject, happening: { kind: 'dispute-closed', dispute, outcome } }]));
  const said: Said[] = [];
  const workspace = storeWorkspace(store, await store.allLots(), SETUP, said);
  act(() =>
    render(
      <WorkspaceContext.Provider value={workspace}>
        <BooksScreen part={lot} more="" />
      </WorkspaceContext.Provider>,
      document.body,
    ),
  );
  await sees(() => pageText().includes('From a dispute, not recorded yet'));
  expect(pageText()).toContain('Still owed$12,124');
  const button = [...document.querySelectorAll('button')].find(
    (each) => each.textContent === 'Record the credit of $700',
  );
  await act(async () => button?.click());
  await sees(() => said.some(({ sentence }) => sentence === 'Price adjusted: a credit of $700 recorded.'));
  await sees(() => !pageText().includes('From a dispute, not recorded yet'));
  expect(pageText()).toContain('Agreed in a dispute.');
  // What is owed is the same: it only stands elsewhere now.
  expect(pageText()).toContain('Still owed$12,124');
  const booked = said.at(-1)?.entry;
  if (booked !== undefined) value(await store.undo(booked));
  await sees(() => pageText().includes('From a dispute, not recorded yet'));
  store.close();
});
