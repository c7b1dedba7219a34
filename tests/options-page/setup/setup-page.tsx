import { render } from 'preact';
import { useReducer } from 'preact/hooks';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, vi } from 'vitest';
import { ok, refuse } from '../../../src/domain/outcome.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import type { Store } from '../../../src/store/store.ts';
import type { Workspace } from '../../../src/ui/workspace.ts';
import { NO_PLAN } from '../../../src/views/lots/planned-bids.ts';

const ENTRY = '01J00000000000000000000000' as EntryId;

/** A page in memory: what was saved, what was said, and a store that can be told to refuse. */
export async function openPage(part: string, given: Partial<Setup> = {}) {
  // What waits to be mended outlives the screen; a new page starts without it.
  vi.resetModules();
  const { SetupScreen } = await import('../../../options-page/setup/setup-screen.tsx');
  const { WorkspaceContext } = await import('../../../src/ui/workspace.ts');
  const page = {
    setup: { ...startingSetup(zone('America/Boise')), ...given } as Setup,
    saved: [] as Partial<Setup>[],
    said: [] as string[],
    refuses: false,
    part,
  };
  const store = { author: async () => ({ name: 'buyer', given: true }) } as Pick<Store, 'author'> as Store;
  const workspace = (): Workspace => ({
    lots: [],
    complete: true,
    setup: page.setup,
    setupKept: true,
    plan: null,
    planned: NO_PLAN,
    saveSetup: async (set) => {
      if (page.refuses) return refuse('full', 'The disk is full. Make room and try again.');
      page.saved.push(set);
      page.setup = { ...page.setup, ...set };
      draw();
      return ok({ entry: ENTRY });
    },
    say: (sentence) => page.said.push(sentence),
    store,
    // The Setup screen asks for nothing else.
    ...({} as Omit<
      Workspace,
      'lots' | 'complete' | 'setup' | 'setupKept' | 'plan' | 'planned' | 'saveSetup' | 'say' | 'store'
    >),
  });
  let draw = () => {};
  // Drawn anew from inside: a second call of render() would hand out the ids of labels a second time.
  const Page = () => {
    const [, redraw] = useReducer((count: number) => count + 1, 0);
    draw = () => redraw(undefined);
    return (
      <WorkspaceContext.Provider value={workspace()}>
        <SetupScreen part={page.part} />
      </WorkspaceContext.Provider>
    );
  };
  act(() => render(<Page />, document.body));
  const show = (next: string) =>
    act(() => {
      page.part = next;
      draw();
    });
  return { page, show };
}

export const button = (name: string) => {
  const found = [...document.querySelectorAll('button')].find(
    (each) => (each.getAttribute('aria-label') ?? each.textContent) === name,
  );
  if (found === undefined) throw new Error(`no button “${name}”`);
  return found;
};
export const box = (label: string) => {
  const found = [...document.querySelectorAll('label')].find((each) => each.textContent?.trim() === label);
  const input = found && (document.getElementById(found.htmlFor) ?? found.querySelector('input'));
  if (!(input instanceof HTMLInputElement)) throw new Error(`no box “${label}”`);
  return input;
};
export const press = (name: string) => act(async () => button(name).click());
export const type = async (label: string, text: string) => {
  const input = box(label);
  await act(async () => {
    input.value = text;
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await act(async () => {
    input.dispatchEvent(new FocusEvent('blur'));
  });
};
export const faults = () =>
  [...document.querySelectorAll('.row-faults, .cell-faults .fault')].map((each) => each.textContent);

/** What every page of the setup needs of its surroundings. */
export function setupPages(): void {
  beforeEach(() => {
    vi.stubGlobal('matchMedia', () => ({ matches: false, addEventListener() {}, removeEventListener() {} }));
    vi.stubGlobal(
      'ResizeObserver',
      class {
        observe() {}
        disconnect() {}
      },
    );
  });
  afterEach(() => {
    act(() => render(null, document.body));
  });
}
