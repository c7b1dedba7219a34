// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { WorksheetStop } from '../../../options-page/lot/worksheet-stop.tsx';
import { type LotFacts, type LotId, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import type { Store } from '../../../src/store/store.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { inventedSetup } from '../../domain/worksheet/invented-setup.ts';
import { lotIn, press, type, until } from '../../doors/doors.tsx';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';
import { pageText, storeWorkspace } from '../store-workspace.ts';

const NOW = Date.parse('2026-11-25T15:00:00Z');
const HOUR = 3_600_000;
const setup = inventedSetup();

beforeEach(() => {
  freshBrowser();
  vi.useFakeTimers({ toFake: ['Date'] });
  vi.setSystemTime(NOW);
});
afterEach(() => {
  act(() => render(null, document.body));
  vi.useRealTimers();
});

const facts = (over: object = {}): LotFacts =>
  lotFactsSchema.parse({
    year: 2020,
    make: 'Larkspur',
    model: 'Hauler',
    venueId: 'ocotillo',
    retail: { likely: 1_800_000 },
    priceNow: 500_000,
    close: { instant: NOW + HOUR, text: '', zone: 'UTC', how: 'picked', doubts: [], otherwise: [] },
    ...over,
  });

/** A lot on its worksheet; `drawn` draws it as the store has it by now. */
async function open(over: object = {}) {
  const store = await openTestStore({ now: () => instant(Date.now()) });
  const id = value(await store.addLots('typed', [{ facts: facts(over) }])).lots[0] as LotId;
  const drawn = async () => {
    const lot = await lotIn(store, id);
    await act(() =>
      render(
        <WorkspaceContext.Provider value={storeWorkspace(store, [lot], setup, [])}>
          <WorksheetStop lot={lot} sheet={worksheetOf(lot.facts, pricingContext(setup))} now={instant(Date.now())} />
        </WorkspaceContext.Provider>,
        document.body,
      ),
    );
  };
  await drawn();
  return { store, id, drawn };
}

const proxyIn = async (store: Store, id: LotId) => (await lotIn(store, id)).facts.proxy;
const state = () => document.querySelector('.worksheet-stop-state');
const figure = () => document.querySelector('.figure-large')?.textContent ?? '';

test('the max bid is in the box already, and one press says that it was placed', async () => {
  const { store, id, drawn } = await open();
  expect(state()?.textContent).toBe('No proxy yet');
  document.querySelector<HTMLElement>('.place-proxy button')?.focus();
  await press(`I placed ${figure()}`);
  await until(async () => (await proxyIn(store, id)) !== undefined);
  await until(() => document.activeElement !== document.body);
  expect(document.activeElement?.className).toContain('place-proxy');
  await drawn();
  expect(state()?.textContent).toContain(`Placed ${figure()}`);
});

test('a proxy above the max bid is asked about first, in sight, and nothing is kept until that is answered', async () => {
  const { store, id } = await open();
  await type('Your proxy', '17,000', true);
  await until(() => document.querySelector('.worksheet-stop .ask-box') !== null);
  expect(pageText()).toContain('over');
  expect(await proxyIn(store, id)).toBeUndefined();
});

test('a proxy that the price has passed is loud, and raising it to the max bid is offered', async () => {
  const { store, id, drawn } = await open();
  await type('Your proxy', '6,000', true);
  await until(async () => (await proxyIn(store, id)) !== undefined);
  vi.setSystemTime(NOW + 60_000);
  value(await store.changeLot(id, { set: { priceNow: cents(650_000) }, clear: [], evidence: {} }));
  await drawn();
  expect(state()?.textContent).toContain('Outbid at $6,500');
  expect(state()?.classList.contains('act')).toBe(true);
  expect(document.querySelector('.place-proxy button')?.textContent).toBe(`I raised it to ${figure()}`);
});

test('once the sale is over nothing is left to place', async () => {
  const { drawn } = await open();
  expect(document.querySelector('.place-proxy input')).not.toBeNull();
  vi.setSystemTime(NOW + 2 * HOUR);
  await drawn();
  expect(document.querySelector('.place-proxy')).toBeNull();
  expect(state()?.textContent).toContain('Closed, no result yet');
});

test('what can’t be worked out yet says so in the place of the number', async () => {
  await open({ retail: undefined });
  expect(figure()).toBe('not yet');
  expect(document.querySelector('.place-proxy button')?.textContent).toBe('I placed …');
});
