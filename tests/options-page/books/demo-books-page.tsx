import { render } from 'preact';
import { useReducer } from 'preact/hooks';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, vi } from 'vitest';
import { BooksScreen } from '../../../options-page/books/books-screen.tsx';
import { loadDemoBooks } from '../../../options-page/demo-load/demo-books-load.ts';
import { loadDemo } from '../../../options-page/demo-load/load-demo.ts';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../../src/journal/sortable-id.ts';
import type { Store } from '../../../src/store/store.ts';
import { type Workspace, WorkspaceContext } from '../../../src/ui/workspace.ts';
import { NO_PLAN } from '../../../src/views/lots/planned-bids.ts';
import { freshBrowser, openTestStore, testClock, testRandom, value } from '../../store/open-test-store.ts';

export const NOW = Date.parse('2026-11-25T18:00Z');
/** Live: what the page of the running test works on. */
export let store: Store;
export let lots: readonly LotState[];
export let said: { sentence: string; undo?: EntryId | undefined }[];
export let show: (part: string, more?: string) => Promise<void>;

/** A page of the Books screen over the demo, made anew for each test of a file. */
export function demoBooksPages(): void {
  beforeEach(open);
  afterEach(leave);
}

async function open(): Promise<void> {
  vi.useFakeTimers({ now: NOW, toFake: ['Date'] });
  freshBrowser();
  // Nothing is printed here.
  vi.stubGlobal('matchMedia', () => Object.assign(new EventTarget(), { matches: false }));
  store = await openTestStore({ now: testClock(NOW).now, channel: false });
  const random = testRandom(3);
  let last: ReturnType<typeof nextLotId> | null = null;
  const scenario = demoScenario(instant(NOW), () => {
    last = nextLotId(instant(NOW), last, random(ID_RANDOM_BYTES));
    return last;
  });
  expect(await loadDemo(store, scenario)).toBeNull();
  expect(await loadDemoBooks(store, scenario.setup, instant(NOW))).toBeNull();
  lots = await store.allLots();
  said = [];
  const place = { part: '', more: '' };
  let draw = () => {};
  const workspace: Workspace = {
    lots,
    complete: true,
    setup: scenario.setup,
    setupKept: true,
    plan: null,
    planned: NO_PLAN,
    store,
    undo: async (entry) => {
      value(await store.undo(entry));
      return { ok: true, value: { entry } };
    },
    say: (sentence, undo) => said.push({ sentence, undo }),
    // The Books screen asks for nothing else.
    ...({} as Omit<
      Workspace,
      'lots' | 'complete' | 'setup' | 'setupKept' | 'plan' | 'planned' | 'store' | 'undo' | 'say'
    >),
  };
  const Page = () => {
    const [, redraw] = useReducer((count: number) => count + 1, 0);
    draw = () => redraw(undefined);
    return (
      <WorkspaceContext.Provider value={workspace}>
        <BooksScreen part={place.part} more={place.more} />
      </WorkspaceContext.Provider>
    );
  };
  act(() => render(<Page />, document.body));
  show = async (part, more = '') => {
    act(() => {
      Object.assign(place, { part, more });
      draw();
    });
    await sees(() => document.querySelector('h1') !== null && document.querySelector('[aria-busy]') === null);
  };
}

function leave(): void {
  act(() => render(null, document.body));
  store.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
}

/** Waits until the page is as it should be: the store answers in its own time. */
export async function sees(is: () => boolean): Promise<void> {
  for (let i = 0; i < 400 && !is(); i++) await act(() => new Promise((resolve) => setTimeout(resolve, 10)));
  if (!is()) throw new Error(`not seen: ${is}\n${document.body.textContent?.slice(0, 3000)}`);
}
export const has = (words: string) => () => document.body.textContent?.includes(words) === true;
export const button = (words: string) => {
  const found = [...document.querySelectorAll('button')].find((each) => each.textContent?.startsWith(words));
  if (found === undefined) throw new Error(`no button “${words}”`);
  return found;
};
export const press = (words: string) => act(() => button(words).click());
export const rowsOf = (selector: string) => [...document.querySelectorAll(`${selector} tbody tr`)];
