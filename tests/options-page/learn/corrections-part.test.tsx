// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { CorrectionsPart } from '../../../options-page/learn/corrections/corrections-part.tsx';
import { type Biases, inventedStore } from '../../../scripts/learn/invented-store.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import type { Store } from '../../../src/store/store.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { freshBrowser, openTestStore, testClock, value } from '../../store/open-test-store.ts';
import { playInto } from '../../views/learn/corrections/played-store.ts';
import { pageText, type Said, sees, storeWorkspace } from '../store-workspace.ts';

let store: Store;
let setup: Setup;
const said: Said[] = [];

async function opened(biases: Biases, perWeek: number) {
  const invented = inventedStore(biases, 21, perWeek);
  const clock = testClock(0);
  store = await openTestStore({ now: clock.now });
  await playInto(store, clock, invented);
  clock.set(invented.now);
  vi.useFakeTimers({ now: invented.now, toFake: ['Date'] });
  const [sample] = invented.lots;
  const facts = sample?.past.forecast.facts ?? {};
  value(await store.addLots('typed', [{ facts: { ...facts, make: 'Larkspur', model: 'Hauler' } }]));
  setup = invented.setup;
  await draw();
  await sees(() => document.querySelector('.correction-rows') !== null);
  return facts;
}

async function draw() {
  const lots = await store.allLots();
  const kept = await store.setup();
  setup = { ...setup, ...kept };
  await act(async () =>
    render(
      <WorkspaceContext.Provider value={storeWorkspace(store, lots, setup, said)}>
        <CorrectionsPart />
      </WorkspaceContext.Provider>,
      document.body,
    ),
  );
}

const row = (title: string): HTMLElement => {
  const found = [...document.querySelectorAll<HTMLElement>('.correction')].find(
    (each) => each.querySelector('h2')?.textContent === title,
  );
  if (found === undefined) throw new Error(`no row “${title}”`);
  return found;
};
const button = (title: string, label: string): HTMLButtonElement | undefined =>
  [...row(title).querySelectorAll('button')].find((each) => each.textContent === label);
const press = (title: string, label: string) => act(async () => button(title, label)?.click());

beforeEach(() => {
  freshBrowser();
  said.length = 0;
  document.body.innerHTML = '';
});
afterEach(() => {
  act(() => render(null, document.body));
  vi.useRealTimers();
});

test('a store without history is told what to record, and has nothing to switch', async () => {
  await opened({}, 0);
  expect(row('Cars that you win').textContent).toContain('Not enough yet: 0 of 3 cars won and sold.');
  expect(row('Recon').textContent).toContain('Record recon bills in the folders under Books');
  expect(document.querySelectorAll('.correction')).toHaveLength(8);
  expect(pageText()).not.toContain('See what it does');
});

test('a correction is switched on only after its effect was shown, moves the max bid as it said, and is undone', async () => {
  const facts = await opened({ recon: { Body: 1.6 } }, 2);
  const recon = () => row('Recon');
  expect(recon().textContent).toContain('Off');
  expect(button('Recon', 'Switch on')).toBeUndefined();
  await press('Recon', 'See what it does');
  // Not before the open lots are worked out.
  expect(button('Recon', 'Switch on')?.disabled).toBe(true);
  await sees(() => recon().textContent?.includes('1 of 1 open max bids would move, down $') === true);
  expect(button('Recon', 'Switch on')?.disabled).toBe(false);

  await press('Recon', 'Replay');
  await sees(() => recon().textContent?.includes('It would have been on for') === true);
  expect(recon().textContent).toMatch(/Of \d+ wins, \d+ would not have been bought/);

  const before = standingOf(facts, pricingContext(setup));
  await press('Recon', 'Switch on');
  await sees(() => said.length > 0);
  expect(said[0]?.sentence).toBe('Recon: on.');
  await draw();
  await sees(() => recon().textContent?.includes('On since') === true);
  const after = standingOf(facts, pricingContext(setup));
  if (!before.ok || !after.ok) throw new Error('it has a max bid');
  expect(after.value.maxBid).toBeLessThan(before.value.maxBid ?? 0);
  // Who just switched keeps his place.
  expect(button('Recon', 'Switch off')).toBeDefined();

  const [done] = said;
  value(await store.undo(...(done?.entry === undefined ? [] : [done.entry])));
  expect((await store.setup())?.corrections?.recon).toBeUndefined();
});
