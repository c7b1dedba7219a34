// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { renderToString } from 'preact-render-to-string';
import { afterEach, expect, test } from 'vitest';
import { CountedFrame } from '../../../options-page/shell/counted-frame.tsx';
import { Frame } from '../../../options-page/shell/frame.tsx';
import { GROUPS } from '../../../options-page/shell/places.ts';
import { readRoute } from '../../../options-page/shell/route.ts';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { openTestStore, value } from '../../store/open-test-store.ts';
import { sees, storeWorkspace } from '../store-workspace.ts';

afterEach(() => act(() => render(null, document.body)));

const COUNTS = {
  results: { count: 3, figure: '3', words: '3 without a result', presses: false },
  todo: { count: 5, figure: '5!', words: '5 open, 2 overdue', presses: true },
};

/** What is read aloud for a link: its text without what is hidden from assistive technology. */
function nameOf(link: Element): string {
  const copy = link.cloneNode(true) as Element;
  for (const hidden of copy.querySelectorAll('[aria-hidden="true"]')) hidden.remove();
  return copy.textContent ?? '';
}

const names = () => [...document.querySelectorAll('nav a')].map(nameOf);

test('buyer, manager and bookkeeper each find their places among a few', () => {
  expect(GROUPS.map(({ short, places }) => [short, ...places.map(({ label }) => label)])).toEqual([
    ['Buying', 'Lots', 'Plan', 'Week', 'Now'],
    ['After sale', 'Results', 'To do', 'Disputes'],
    ['Books', 'Books', 'Learn'],
    ['Tools', 'Add lots', 'Setup', 'Backup', 'Team', 'Words'],
  ]);
});

test('each place leads to a screen of its own, and no screen belongs to two', () => {
  const places = GROUPS.flatMap((group) => group.places);
  for (const { hash, screens } of places) expect(screens).toContain(readRoute(hash).screen);
  const screens = places.flatMap((place) => place.screens);
  expect(new Set(screens).size).toBe(screens.length);
});

test('groups have names, and the place where one is, is marked', () => {
  act(() => render(<Frame screen="won" clock={null} children={null} />, document.body));
  const groups = [...document.querySelectorAll('nav [role="group"]')];
  expect(groups.map((group) => group.getAttribute('aria-label'))).toEqual(GROUPS.map(({ name }) => name));
  expect([...document.querySelectorAll('[aria-current]')].map(nameOf)).toEqual(['To do']);
  expect([...document.querySelectorAll('.frame-opener')].map(nameOf)).toEqual([
    'Buying',
    'After sale, you are here',
    'Books',
    'Tools',
  ]);
});

test('what waits stands beside the word and is read in words', () => {
  act(() => render(<Frame screen="lots" clock={null} counts={COUNTS} children={null} />, document.body));
  expect(names()).toContain('Results, 3 without a result');
  expect(names()).toContain('To do, 5 open, 2 overdue');
  expect([...document.querySelectorAll('.frame-places .frame-count')].map((each) => each.textContent)).toEqual([
    '3',
    '5!',
  ]);
  expect(document.querySelectorAll('.frame-places .frame-count.presses')).toHaveLength(1);
  // Where only the groups are in sight, each says what waits in it.
  expect([...document.querySelectorAll('.frame-opener')].map(nameOf)).toContain(
    'After sale, 3 without a result; 5 open, 2 overdue',
  );
  expect([...document.querySelectorAll('.frame-opener .frame-count.presses')].map((each) => each.textContent)).toEqual([
    '8!',
  ]);
});

test('a group opens and closes by its word, Escape, a press elsewhere, and where it led', () => {
  act(() =>
    render(<Frame screen="lots" clock={null} children={<button type="button">Elsewhere</button>} />, document.body),
  );
  const opener = document.querySelectorAll<HTMLElement>('.frame-opener')[1];
  const open = () =>
    [...document.querySelectorAll('.frame-opener')]
      .filter((each) => each.getAttribute('aria-expanded') === 'true')
      .map(nameOf);
  const ways: readonly (() => void)[] = [
    () => opener?.click(),
    () => opener?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true })),
    () => document.querySelector('main button')?.dispatchEvent(new Event('pointerdown', { bubbles: true })),
    () => document.querySelector('main button')?.dispatchEvent(new Event('focusin', { bubbles: true })),
    () => document.querySelector<HTMLElement>('a[href="#/results"]')?.click(),
  ];
  for (const close of ways) {
    act(() => opener?.click());
    expect(open()).toEqual(['After sale']);
    act(close);
    expect(open()).toEqual([]);
  }
});

test('before anything is counted the frame is the one that the build writes', () => {
  const first = renderToString(<Frame screen="lots" clock={null} children={null} />);
  expect(renderToString(<Frame screen="lots" clock={null} counts={{}} children={null} />)).toBe(first);
  expect(first).not.toContain('frame-count');
});

test('lots that closed are counted from what is in memory, after the screen stands', async () => {
  const store = await openTestStore();
  const close = { instant: Date.now() - 60_000, text: '', zone: 'UTC', how: 'picked', doubts: [], otherwise: [] };
  value(await store.addLots('typed', [{ facts: lotFactsSchema.parse({ make: 'Larkspur', close }) }]));
  const workspace = storeWorkspace(store, await store.allLots(), startingSetup(zone('America/Boise')), []);
  act(() =>
    render(
      <WorkspaceContext.Provider value={workspace}>
        <CountedFrame screen="lots" clock={null} children={null} />
      </WorkspaceContext.Provider>,
      document.body,
    ),
  );
  expect(names()).toContain('Results');
  await sees(() => names().includes('Results, 1 without a result'));
});
