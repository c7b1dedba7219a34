import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type LotFacts, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { HOUR } from '../../../src/domain/time/units.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { Store } from '../../../src/store/store.ts';
import { doAtMax, planAtMax } from '../../../src/views/lots/do-lot-acts.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';
import { inventedSetup } from '../../domain/worksheet/invented-setup.ts';
import { freshBrowser, openTestStore, value } from '../../store/open-test-store.ts';

const NOW = instant(Date.parse('2026-11-26T23:00:00Z'));
const setup = inventedSetup();

beforeEach(freshBrowser);
afterEach(() => vi.useRealTimers());

const facts = (over: object = {}): LotFacts =>
  lotFactsSchema.parse({
    make: 'Larkspur',
    model: 'Hauler',
    venueId: 'ocotillo',
    retail: { likely: 1_800_000 },
    priceNow: 500_000,
    close: { instant: NOW + 20 * HOUR, text: '', zone: 'UTC', how: 'picked', doubts: [], otherwise: [] },
    ...over,
  });

async function fourLots(): Promise<{ store: Store; lots: readonly LotState[] }> {
  const store = await openTestStore({ now: () => NOW });
  const made = [facts({ lotNumber: '1' }), facts({ lotNumber: '2' }), facts({ lotNumber: '3', priceNow: 4_000_000 })];
  value(
    await store.addLots(
      'typed',
      [...made, facts({ lotNumber: '4', retail: undefined })].map((one) => ({ facts: one })),
    ),
  );
  return { store, lots: await store.allLots() };
}
const place = () => ({ setup, standings: standingsUnder(setup), now: NOW });
const numbers = (all: readonly { readonly lot: LotState }[]) => all.map(({ lot }) => lot.facts.lotNumber);

test('of chosen lots only those are noted at max on which nothing has to be asked; each other one is named with its reason', async () => {
  const { store, lots } = await fourLots();
  const { ready, left } = planAtMax(lots, place());
  expect(numbers(ready)).toEqual(['1', '2']);
  expect(left.map(({ lot, why }) => [lot.facts.lotNumber, why])).toEqual([
    ['3', expect.stringMatching(/^Price \$[\d,]+ over max$/)],
    ['4', 'Enter retail estimate'],
  ]);
  const done = await doAtMax(store, ready, place());
  expect(done.left).toEqual([]);
  const kept = await store.allLots();
  expect(kept.map(({ facts: { proxy } }) => proxy)).toEqual([ready[0]?.cents, ready[1]?.cents, undefined, undefined]);
  value(await store.undo(...done.entries));
  expect((await store.allLots()).every(({ facts: { proxy } }) => proxy === undefined)).toBe(true);
});

test('a price that rose over max between the question and the answer leaves its lot out, and costs no other', async () => {
  const { store, lots } = await fourLots();
  const { ready } = planAtMax(lots, place());
  const [first] = lots;
  if (first === undefined) throw new Error('no lot was kept');
  value(await store.changeLot(first.id, { set: { priceNow: cents(3_000_000) } }));
  const done = await doAtMax(store, ready, place());
  expect(done.left.map(({ lot, why }) => [lot.facts.lotNumber, why])).toEqual([
    ['1', expect.stringContaining('Price was $30,000')],
  ]);
  expect(done.entries).toHaveLength(1);
  expect((await store.allLots()).map(({ facts: { proxy } }) => proxy !== undefined)).toEqual([
    false,
    true,
    false,
    false,
  ]);
});
