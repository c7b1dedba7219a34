// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { loadDemoSeason, pacedClock } from '../../../options-page/demo-load/load-demo-season.ts';
import { LearnScreen } from '../../../options-page/learn/learn-screen.tsx';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../../src/journal/sortable-id.ts';
import type { Store } from '../../../src/store/store.ts';
import { WorkspaceContext } from '../../../src/ui/workspace.ts';
import { freshBrowser, openTestStore, testClock, testRandom } from '../../store/open-test-store.ts';
import { pageText, sees, storeWorkspace } from '../store-workspace.ts';

const NOW = Date.parse('2026-11-25T18:00Z');
let store: Store;

const scenario = () => {
  const random = testRandom(3);
  let last: ReturnType<typeof nextLotId> | null = null;
  return demoScenario(instant(NOW), () => {
    last = nextLotId(instant(NOW), last, random(ID_RANDOM_BYTES));
    return last;
  });
};

beforeEach(async () => {
  vi.useFakeTimers({ now: NOW, toFake: ['Date'] });
  freshBrowser();
  store = await openTestStore({ now: testClock(NOW).now });
});

afterEach(() => {
  act(() => render(null, document.body));
  store.close();
  vi.useRealTimers();
});

async function show(part: string) {
  const workspace = storeWorkspace(store, await store.allLots(), scenario().setup, []);
  act(() =>
    render(
      <WorkspaceContext.Provider value={workspace}>
        <LearnScreen part={part} />
      </WorkspaceContext.Provider>,
      document.body,
    ),
  );
  await sees(() => document.querySelector('h1') !== null && document.querySelector('[aria-busy]') === null);
}

describe('the Learn screen', () => {
  test('without a past lot teaches what to record, and invents no figure', async () => {
    await show('');
    expect(pageText()).toContain('Not enough yet: 8 more sold cars.');
    expect(pageText()).not.toContain('Chances to win');
    expect(document.querySelectorAll('svg')).toHaveLength(0);
    await show('money');
    expect(pageText()).toContain('Not enough yet: no car with a sale and an estimate.');
    await show('misses');
    expect(pageText()).toContain('None so far.');
  });

  test('with the demo’s season shows its pictures, finds the planted errors and nothing else', async () => {
    const clock = pacedClock(instant(NOW));
    const past = await openTestStore({ now: clock.now });
    expect(await loadDemoSeason(past, scenario(), clock)).toBeNull();
    past.close();
    await show('');
    expect(pageText()).not.toContain('Not enough yet');
    expect(document.querySelectorAll('svg[role="img"]').length).toBe(3);
    for (const picture of document.querySelectorAll('svg[role="img"]')) {
      expect(picture.getAttribute('aria-label')?.length).toBeGreaterThan(40);
    }
    // Planted: tires cost more, and one venue bills $25 more.
    const bold = [...document.querySelectorAll('tr')].filter((row) => row.querySelector('strong') !== null);
    expect(bold.map((row) => row.querySelector('th')?.textContent)).toContain('Tires');
    expect(pageText()).toContain('$25 over');
    expect(pageText()).not.toContain('NaN');
    await show('misses');
    const dates = [...document.querySelectorAll('.miss > .small')].map((one) => Date.parse(one.textContent ?? ''));
    expect(dates.length).toBeGreaterThan(3);
    expect(dates).toEqual(dates.toSorted((a, b) => b - a));
    await show('money');
    expect(pageText()).toContain('Actual, average of');
    expect(pageText()).not.toMatch(/overpaid|left on the table/i);
    await show('groups');
    expect(pageText()).toContain('Saguaro Sale Yard');
  });
});
