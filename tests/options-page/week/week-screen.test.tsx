// @vitest-environment jsdom

import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { readRoute } from '../../../options-page/shell/route.ts';
import { WeekScreen } from '../../../options-page/week/week-screen.tsx';
import { demoSetup } from '../../../src/demo/demo-setup.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../../src/domain/time/local-date.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import type { ClockState } from '../../../src/journal/states/clock-state.ts';
import type { Store } from '../../../src/store/store.ts';
import { type Workspace, WorkspaceContext } from '../../../src/ui/workspace.ts';
import { NO_PLAN } from '../../../src/views/lots/planned-bids.ts';

/** A Wednesday morning in Boise, seven hours behind UTC; the demo's Saturday is busy from 10 AM to 5 PM. */
const NOW = Date.parse('2026-11-25T08:00:00-07:00');

beforeEach(() => {
  vi.useFakeTimers({ now: NOW, toFake: ['Date', 'setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(1200);
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
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

let lotNumber = 0;
function lotClosing(at: number | string, facts: LotFacts = {}): LotState {
  lotNumber += 1;
  const id = `01K9${String(lotNumber).padStart(22, '0')}` as LotId;
  const close = {
    instant: instant(typeof at === 'number' ? at : Date.parse(at)),
    text: '',
    zone: zone('America/Boise'),
    how: 'store-zone' as const,
    doubts: [],
    otherwise: [],
  };
  return {
    id,
    facts: { year: 2021, make: 'Larkspur', lotNumber: String(lotNumber), close, ...facts },
    evidence: {},
    source: 'typed',
    addedAt: instant(NOW),
    changedAt: instant(NOW),
    dropped: false,
    bornIn: id as string as EntryId,
  };
}

async function open(
  hash: string,
  lots: readonly LotState[],
  shown: ReadonlyMap<string, Instant> = new Map(),
  setup = demoSetup('2026-11-25' as LocalDate),
) {
  const route = readRoute(hash);
  if (route.screen !== 'week') throw new Error(`not the week: ${hash}`);
  const workspace = {
    lots,
    complete: true,
    setup,
    setupKept: true,
    plan: null,
    planned: NO_PLAN,
    // Of the store the screen asks only what was said already; what saves a file is pressed in the real browsers.
    store: { shownAlerts: async () => shown, subscribe: () => () => undefined } as Partial<Store> as Store,
    ...({} as Omit<Workspace, 'lots' | 'complete' | 'setup' | 'setupKept' | 'plan' | 'planned' | 'store'>),
  };
  await act(() =>
    render(
      <WorkspaceContext.Provider value={workspace}>
        <WeekScreen {...route} />
      </WorkspaceContext.Provider>,
      document.body,
    ),
  );
}

const marks = () => [...document.querySelectorAll<HTMLElement>('fieldset .time-mark')];
const names = () => marks().map((mark) => mark.getAttribute('aria-label'));

test('each mark says its day, time, car, stop and what is still to be done', async () => {
  await open('#/week', [
    lotClosing('2026-11-28T12:05:00-07:00'),
    lotClosing('2026-11-28T19:00:00-07:00', { make: 'Merrow', proxy: cents(800_000) }),
    lotClosing('2026-11-25T07:00:00-07:00', { make: 'Ollerton' }),
  ]);
  act(() => {
    vi.advanceTimersByTime(1000);
  });
  expect(names()).toEqual([
    'Wed Nov 25, 7:00 AM · 2021 Ollerton · No max bid yet · closed, enter how it ended',
    'Sat Nov 28, 12:05 PM · 2021 Larkspur · No max bid yet · no proxy yet, in busy hours · reminders 11:35 AM, 11:55 AM',
    'Sat Nov 28, 7:00 PM · 2021 Merrow · No max bid yet · placed $8,000, no max bid · reminders 6:30 PM, 6:50 PM',
  ]);
  expect(document.body.textContent).toContain('1 to act on in busy hours');
});

test('ticks and words follow what was said back to a lot, and what was said already is no longer ahead', async () => {
  const CLOSE = instant(Date.parse('2026-11-25T12:00:00-07:00'));
  const lot = (clock: ClockState, facts: LotFacts = {}) => ({ ...lotClosing(CLOSE, facts), clock });
  const plan = async (one: LotState, shown?: ReadonlyMap<string, Instant>) => {
    act(() => render(null, document.body));
    await open('#/week/2026-11-25', [one], shown);
    return [
      marks()[0]?.getAttribute('aria-label')?.split(' · ').slice(3).join(' · '),
      document.querySelectorAll('fieldset .time-tick').length,
    ];
  };
  // Each has one tick more than calls: it is asked afterwards how it ended.
  expect(await plan(lot({}))).toEqual(['no proxy yet · reminders 11:30 AM, 11:50 AM', 3]);
  expect(await plan(lot({ leadMinutes: [30] }))).toEqual(['no proxy yet · reminders 11:30 AM', 2]);
  expect(await plan(lot({ leadMinutes: [] }))).toEqual(['no proxy yet', 1]);
  expect(await plan(lot({ putOffUntil: instant(CLOSE - 20 * MINUTE) }))).toEqual([
    'no proxy yet · reminders 11:40 AM',
    2,
  ]);
  expect(await plan(lot({ handedTo: { to: 'The closer', at: instant(NOW) } }))).toEqual([
    'no proxy yet, The closer has it · reminders 11:50 AM',
    2,
  ]);
  expect(await plan(lot({ doneFor: CLOSE }))).toEqual(['no proxy yet, no more reminders', 0]);
  const unsaid = lot({});
  const said = new Map([[`${unsaid.id} 30 ${CLOSE}`, instant(NOW)]]);
  expect(await plan(unsaid, said)).toEqual(['no proxy yet · reminders 11:50 AM', 2]);
});

test('the evening list of a busy day stands in the day before it, in whatever hour it comes', async () => {
  await open('#/week/2026-11-27', [
    lotClosing('2026-11-28T12:05:00-07:00'),
    lotClosing('2026-11-27T18:30:00-07:00', { proxy: cents(800_000) }),
  ]);
  const hours = () => [...document.querySelectorAll('fieldset .time-hours span')].map((hour) => hour.textContent);
  // The reminder before Friday's own rush, the calls for a bid without a max bid, the question after it, and the list for Saturday.
  expect(document.querySelectorAll('fieldset .time-tick')).toHaveLength(5);
  const setup = demoSetup('2026-11-25' as LocalDate);
  const late = { ...setup, alerts: { ...setup.alerts, digestAt: '21:30' as LocalTime } };
  await open('#/week/of/2026-11-27', [lotClosing('2026-11-28T12:05:00-07:00')], new Map(), late);
  expect(hours()).toContain('9 PM');
});

test('one mark is a stop for Tab, the first that is still to close; arrow keys reach the others', async () => {
  await open('#/week', [
    lotClosing('2026-11-25T07:00:00-07:00'),
    lotClosing('2026-11-27T12:00:00-07:00'),
    lotClosing('2026-11-28T12:00:00-07:00'),
    lotClosing('2026-11-28T12:01:00-07:00'),
  ]);
  const stops = () => marks().filter(({ tabIndex }) => tabIndex === 0);
  expect(stops()).toEqual([marks()[1]]);
  Element.prototype.scrollIntoView = () => undefined;
  stops()[0]?.focus();
  const press = (key: string) =>
    act(() => {
      document.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    });
  const at = () => marks().indexOf(document.activeElement as HTMLElement);
  press('ArrowRight');
  expect(at()).toBe(2);
  press('End');
  expect(at()).toBe(3);
  press('ArrowUp');
  expect(at()).toBe(1);
  press('ArrowLeft');
  expect(at()).toBe(0);
  press('ArrowLeft');
  expect(at()).toBe(0);
  expect(stops()).toEqual([marks()[0]]);
});

test('four thousand closings in one evening are a few marks with their counts, and a list a part at a time', async () => {
  const evening = Date.parse('2026-11-28T18:00:00-07:00');
  const lots = Array.from({ length: 4_000 }, (_, i) => lotClosing(evening + (i % 120) * MINUTE));
  await open('#/week', lots);
  expect(marks().length).toBeLessThan(12);
  const counts = marks().map((mark) => Number(mark.textContent?.replaceAll(',', '')));
  expect(counts.reduce((sum, count) => sum + count, 0)).toBe(4_000);
  expect(names()[0]).toMatch(/^Sat Nov 28 · [\d,]+ close from 6:00 PM to .* PM · .*opens the day$/);
  await open('#/week/2026-11-28', lots);
  expect(document.querySelectorAll('.day-row').length).toBeLessThanOrEqual(150);
  expect(document.body.textContent).toContain('3,850 more close later this day.');
});

test('an evening of a hundred can be told apart by time in the list, from where the pile began', async () => {
  const evening = Date.parse('2026-11-28T18:00:00-07:00');
  Element.prototype.scrollIntoView = () => undefined;
  await open(
    '#/week/2026-11-28/19:30',
    Array.from({ length: 100 }, (_, i) => lotClosing(evening + i * 2 * MINUTE)),
  );
  expect(document.querySelectorAll('.day-row')).toHaveLength(100);
  expect((document.activeElement as HTMLElement | null)?.dataset.time).toBe('19:30');
});

test('the day the clock goes back says so, and a close in the hour that comes twice stands in its own half', async () => {
  await open('#/week/of/2026-11-01', [
    lotClosing('2026-11-01T01:30:00-06:00', { make: 'First' }),
    lotClosing('2026-11-01T01:30:00-07:00', { make: 'Second' }),
  ]);
  expect(document.body.textContent).toContain('this day has 25 hours');
  // Its hours stand elsewhere than those of the other days, so they are named a second time.
  expect(document.querySelectorAll('fieldset .time-body .time-hours')).toHaveLength(1);
  const [first, second] = marks().map((mark) => Number.parseFloat(mark.closest('li')?.style.left ?? ''));
  expect(second).toBeGreaterThan((first ?? 0) + 2);
});

test('a week without closings points to the next one, and without lots to where they are added', async () => {
  await open('#/week/of/2026-11-16', [lotClosing('2026-11-28T12:05:00-07:00')]);
  expect(document.querySelector('.note a')?.getAttribute('href')).toBe('#/week/2026-11-28');
  await open('#/week', []);
  expect(document.querySelector('.note a')?.getAttribute('href')).toBe('#/add');
});
