// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test } from 'vitest';
import { WhoAsks } from '../../../options-page/shell/who-asks.tsx';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { openTestStore, value } from '../../store/open-test-store.ts';
import { pageText, type Said, sees, storeWorkspace } from '../store-workspace.ts';

afterEach(() => act(() => render(null, document.body)));

test('a browser is asked once who uses it, and what is kept carries that name from then on', async () => {
  const store = await openTestStore();
  const said: Said[] = [];
  const workspace = storeWorkspace(store, [], startingSetup(zone('America/Boise')), said);
  const draw = () =>
    act(() =>
      render(
        <WorkspaceContext.Provider value={workspace}>
          <WhoAsks />
        </WorkspaceContext.Provider>,
        document.body,
      ),
    );
  draw();
  await sees(() => pageText().includes('Who uses this browser?'));
  const type = (name: string) =>
    act(() => {
      const input = document.querySelector('input');
      if (input === null) throw new Error('no box for the name');
      input.value = name;
      input.dispatchEvent(new Event('input', { bubbles: true }));
    });
  const save = () => act(() => document.querySelector('form')?.requestSubmit());
  type('   ');
  save();
  await sees(() => said.some(({ sentence }) => sentence.includes('1 to 80')));
  expect(pageText()).toContain('Who uses this browser?');
  type(' manager ');
  save();
  await sees(() => pageText() === '');
  expect(said.at(-1)?.sentence).toContain('recorded as done by manager');
  const { lots } = value(await store.addLots('typed', [{ facts: {} }]));
  const [lot] = lots;
  const history = lot === undefined ? [] : await store.historyOfLot(lot);
  expect(history.map(({ read }) => read.as === 'known' && read.raw.author)).toEqual(['manager']);
  act(() => render(null, document.body));
  draw();
  await sees(() => true);
  expect(pageText()).toBe('');
});
