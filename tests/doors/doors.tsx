import { render } from 'preact';
import { act } from 'preact/test-utils';
import { PayingInputs } from '../../options-page/lot/inputs/paying-inputs.tsx';
import { SaleLogPart } from '../../options-page/lot/sale/sale-log.tsx';
import { useLotEdit } from '../../options-page/lot/use-lot-edit.ts';
import { NowCard } from '../../options-page/now/now-card.tsx';
import { nowLots } from '../../options-page/now/now-lot.ts';
import { Closings } from '../../options-page/results/closings.tsx';
import { demoSetup } from '../../src/demo/demo-setup.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { SaleNote } from '../../src/popup/sale/sale-note.tsx';
import type { Store } from '../../src/store/store.ts';
import { WorkspaceContext } from '../../src/ui/workspace.ts';
import { standingsUnder } from '../../src/views/lots/standing.ts';
import { storeWorkspace } from '../options-page/store-workspace.ts';

export const setup = demoSetup('2026-11-25' as LocalDate);
export const DOORS = ['Now', 'popup', 'worksheet', 'Results'] as const;
export type Door = (typeof DOORS)[number];

/** Opens a lot at a door, as a person sees it there. */
export async function openAt(door: Door, store: Store, id: LotId): Promise<void> {
  const lot = await lotIn(store, id);
  const now = instant(Date.now());
  await act(async () => {
    render(
      <WorkspaceContext.Provider value={storeWorkspace(store, [lot], setup, [])}>
        <Opened door={door} store={store} lot={lot} now={now} />
      </WorkspaceContext.Provider>,
      document.body,
    );
  });
}

interface OpenedProps {
  readonly door: Door;
  readonly store: Store;
  readonly lot: LotState;
  readonly now: ReturnType<typeof instant>;
}

function Opened({ door, store, lot, now }: OpenedProps) {
  const standings = standingsUnder(setup);
  const edit = useLotEdit(lot);
  const [nowLot] = nowLots([lot], standings, []);
  switch (door) {
    case 'Now':
      return nowLot ? <NowCard lot={nowLot} people={[]} now={now} open /> : null;
    case 'popup':
      return (
        <SaleNote store={store} setup={setup} lot={lot} standings={standings} now={now} onKept={() => undefined} />
      );
    case 'worksheet':
      return (
        <>
          <SaleLogPart lot={lot} now={now} />
          <PayingInputs lot={lot} edit={edit} />
        </>
      );
    case 'Results':
      return <Closings minute={now} complete />;
  }
}

export async function lotIn(store: Store, id: LotId): Promise<LotState> {
  const lot = await store.lot(id);
  if (lot === null) throw new Error('the lot is gone');
  return lot;
}

/** Lets what was pressed be kept and drawn. */
const settle = () => act(() => new Promise((resolve) => setTimeout(resolve, 30)));

/** Waits until it is so: the store answers in its own time. */
export async function until(is: () => boolean | Promise<boolean>): Promise<void> {
  for (let i = 0; i < 100 && !(await is()); i++) await settle();
}

/** Presses the first button with these words, once it is there. */
export async function press(words: string | RegExp): Promise<void> {
  const isIt = (text: string) => (typeof words === 'string' ? text === words : words.test(text));
  const find = () => [...document.querySelectorAll('button')].find((each) => isIt((each.textContent ?? '').trim()));
  await until(() => find() !== undefined);
  const button = find();
  if (button === undefined) throw new Error(`no button ${words} in: ${buttons().join(' | ')}`);
  button.click();
  await settle();
}

export const buttons = (): string[] =>
  [...document.querySelectorAll('button')].map((each) => (each.textContent ?? '').trim());

/** Types into the box with this label, or the first that matches. */
export async function type(label: string, text: string, enter = false): Promise<void> {
  const named = [...document.querySelectorAll('label')].find((each) => each.textContent?.trim().startsWith(label));
  const box =
    (named && document.getElementById(named.htmlFor)) ??
    document.querySelector<HTMLInputElement>(`input[aria-label^="${label}"]`);
  if (!(box instanceof HTMLInputElement)) throw new Error(`no box ${label}`);
  await act(async () => {
    box.focus();
    box.value = text;
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  if (!enter) return;
  await act(async () => {
    box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
    if (box.form !== null) box.form.requestSubmit();
  });
  await settle();
}
