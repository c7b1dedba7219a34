import { beforeEach, expect, test } from 'vitest';
import { loadDemoBooks } from '../../options-page/demo-load/demo-books-load.ts';
import { loadDemo } from '../../options-page/demo-load/load-demo.ts';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../../src/journal/sortable-id.ts';
import { freshBrowser, openTestStore, testClock, testRandom } from '../store/open-test-store.ts';

beforeEach(freshBrowser);

// A Wednesday late in a month, the first of a month, and a Saturday in the rush.
test.each(['2026-11-25T18:00Z', '2026-12-01T16:00Z', '2027-01-16T20:00Z'])(
  'the invented bookkeeper has booked some cars, closed the month before, and left others for today: %s',
  async (text) => {
    const now = instant(Date.parse(text));
    const store = await openTestStore({ now: testClock(now).now });
    const random = testRandom(3);
    let last: ReturnType<typeof nextLotId> | null = null;
    const scenario = demoScenario(now, () => {
      last = nextLotId(now, last, random(ID_RANDOM_BYTES));
      return last;
    });
    expect(await loadDemo(store, scenario)).toBeNull();
    expect(await loadDemoBooks(store, scenario.setup, now)).toBeNull();
    const books = await store.books();
    const won = (await store.allLots()).filter(({ sale }) => sale?.result?.result.ended === 'won');
    expect(won.length).toBeGreaterThan(3);
    expect(new Set(books.costs.map(({ lot }) => lot)).size).toBe(3);
    expect(books.outcomes.size).toBe(2);
    expect(books.closes.length).toBe(1);
    expect(books.costs.some(({ label }) => label === 'Storage')).toBe(true);
  },
);
