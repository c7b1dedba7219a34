// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { App } from '../../../options-page/shell/app.tsx';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Store } from '../../../src/store/store.ts';
import { Contained } from '../../../src/ui/contained.tsx';
import { type Workspace, WorkspaceContext } from '../../../src/ui/workspace.ts';
import { NO_PLAN } from '../../../src/views/lots/planned-bids.ts';
import { poisoned } from '../../domain/lot/hostile-facts.ts';
import { inventedSetup } from '../../domain/worksheet/invented-setup.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';
import { pageText, sees } from '../store-workspace.ts';

const NOW = Date.parse('2026-11-25T15:00:00Z');
const setup = inventedSetup();

beforeEach(() => {
  freshBrowser();
  vi.setSystemTime(NOW);
  vi.stubGlobal('reportError', () => undefined);
  vi.stubGlobal('matchMedia', () => ({ matches: false, addEventListener() {}, removeEventListener() {} }));
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe() {}
      unobserve() {}
      disconnect() {}
    },
  );
  vi.spyOn(HTMLElement.prototype, 'clientHeight', 'get').mockReturnValue(800);
  vi.spyOn(HTMLElement.prototype, 'offsetHeight', 'get').mockReturnValue(800);
});
afterEach(() => {
  act(() => render(null, document.body));
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const facts = (model: string, over: object = {}) =>
  lotFactsSchema.parse({
    year: 2020,
    make: 'Larkspur',
    model,
    venueId: 'ocotillo',
    retail: { likely: 1_800_000 },
    close: { instant: NOW + 3_600_000, text: '', zone: 'UTC', how: 'picked', doubts: [], otherwise: [] },
    ...over,
  });

interface Opened {
  readonly store: Store;
  readonly show: (lots: readonly LotState[]) => Promise<void>;
  readonly lots: readonly LotState[];
}

/** The companion page over a store that holds a lot that can't be worked out beside one that can. */
async function open(
  hash: (bad: LotState) => string,
  spoil: (lot: LotState) => LotState = (lot) => lot,
): Promise<Opened> {
  const store = await openTestStore();
  value(
    await store.addLots('typed', [
      { facts: facts('Poisoned', { retail: { low: 0, likely: 1_800_000 } }) },
      { facts: facts('Hauler') },
    ]),
  );
  const kept = (await store.allLots()).map((lot) => (lot.facts.model === 'Poisoned' ? spoil(lot) : lot));
  const bad = kept.find((lot) => lot.facts.model === 'Poisoned');
  if (bad === undefined) throw new Error('the lot was not kept');
  const show = async (lots: readonly LotState[]) => {
    const workspace: Workspace = {
      lots,
      complete: true,
      setup,
      setupKept: true,
      plan: null,
      planned: NO_PLAN,
      store,
      say: () => undefined,
      undo: async (entry) => {
        value(await store.undo(entry));
        return { ok: true, value: { entry } };
      },
      ...({} as Omit<
        Workspace,
        'lots' | 'complete' | 'setup' | 'setupKept' | 'plan' | 'planned' | 'store' | 'say' | 'undo'
      >),
    };
    await act(() =>
      render(
        <WorkspaceContext.Provider value={workspace}>
          <App />
        </WorkspaceContext.Provider>,
        document.body,
      ),
    );
  };
  location.hash = hash(bad);
  await show(kept);
  return { store, show, lots: kept };
}

/** By a figure that nobody can have meant, and by a mistake of ours. */
const WAYS = [
  ['a low end of nothing', (lot: LotState) => lot, 'the low end of retail is $0'],
  ['a mistake of ours', (lot: LotState) => ({ ...lot, facts: poisoned(lot.facts) }), 'came out as nan cents'],
] as const;

describe.each(WAYS)('beside a lot that can’t be worked out, by %s,', (_, spoil, why) => {
  test('the list shows the other one’s figure, and why this one has none', async () => {
    await open(() => '#/lots', spoil);
    await sees(() => /Hauler/.test(pageText()) && /\$\d\d,\d\d\d/.test(pageText()));
    expect(pageText()).toContain('can’t be worked out');
    expect(pageText().toLowerCase()).toContain(why);
  });

  test('Now shows both, with the time left', async () => {
    await open(() => '#/now', spoil);
    await sees(() => /Hauler/.test(pageText()) && /Poisoned/.test(pageText()));
    expect(pageText().toLowerCase()).toContain(why);
    expect(pageText()).toMatch(/stop at\$\d/);
  });

  test('its worksheet says why, keeps its inputs, and its last change is undone there', async () => {
    const { store, show } = await open((bad) => `#/lot/${bad.id}`, spoil);
    await sees(() => pageText().includes('The max bid can’t be worked out'));
    expect(pageText().toLowerCase()).toContain(why);
    expect(pageText()).toContain('Title and money');
    const poison = async () => (await store.allLots()).find(({ facts: { model } }) => model === 'Poisoned');
    const bad = await poison();
    if (bad === undefined) throw new Error('the lot is gone');
    value(await store.changeLot(bad.id, { set: { retail: { likely: 999_999_999_900 as never } } }));
    await show((await store.allLots()).map((lot) => (lot.id === bad.id ? spoil(lot) : lot)));
    const button = () => [...document.querySelectorAll('button')].find(({ textContent }) => textContent === 'Undo');
    await sees(() => button() !== undefined);
    button()?.click();
    await sees(() => true);
    await vi.waitFor(async () => expect((await poison())?.facts.retail).toEqual(bad.facts.retail));
  });
});

test('a screen that can’t be drawn costs only itself, and is tried again when something changes', async () => {
  let broken = true;
  const Part = () => {
    if (broken) throw new RangeError('an amount came out as NaN cents');
    return <p>All is well</p>;
  };
  const draw = (of: number) =>
    act(() =>
      render(
        <>
          <p>The rest</p>
          <Contained what="This part" of={of}>
            <Part />
          </Contained>
        </>,
        document.body,
      ),
    );
  await draw(1);
  expect(pageText()).toContain('This part can’t be shown.');
  expect(pageText()).toContain('an amount came out as NaN cents');
  expect(pageText()).toContain('The rest');
  broken = false;
  await draw(1);
  expect(pageText()).toContain('can’t be shown');
  await draw(2);
  expect(pageText()).toBe('The restAll is well');
});
