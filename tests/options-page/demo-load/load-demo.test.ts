import { beforeEach, expect, test } from 'vitest';
import { loadDemo } from '../../../options-page/demo-load/load-demo.ts';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../../src/journal/sortable-id.ts';
import { freshBrowser, openTestStore, testRandom } from '../../store/open-test-store.ts';

beforeEach(freshBrowser);

test('the demo goes into an empty store whole, its past sales with their receipts and results', async () => {
  const store = await openTestStore();
  const now = instant(Date.UTC(2026, 10, 25, 17));
  const random = testRandom(9);
  let last: ReturnType<typeof nextLotId> | null = null;
  const scenario = demoScenario(now, () => {
    last = nextLotId(now, last, random(ID_RANDOM_BYTES));
    return last;
  });
  expect(await loadDemo(store, scenario)).toBeNull();
  const lots = await store.allLots();
  expect(lots).toHaveLength(scenario.lots.length + scenario.past.lots.length);
  expect(lots.filter(({ sale }) => sale?.result !== undefined)).toHaveLength(scenario.past.sales.length);
  expect(lots.some(({ sale }) => (sale?.bids.length ?? 0) > 1)).toBe(true);
});
