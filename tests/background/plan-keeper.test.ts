import { beforeEach, expect, test } from 'vitest';
import { loadDemo } from '../../options-page/demo-load/load-demo.ts';
import { planKeeper, seeToPlan } from '../../src/background/plan-keeper.ts';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import type { PurseEntry } from '../../src/domain/setup/purse-entry.ts';
import { wholeSetup } from '../../src/domain/setup/starting-setup.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { DAY, HOUR } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { nextLotId } from '../../src/journal/sortable-id.ts';
import type { Store } from '../../src/store/store.ts';
import { doLotAct } from '../../src/views/lots/do-lot-act.ts';
import { standingsUnder } from '../../src/views/lots/standing.ts';
import { plannedBids } from '../../src/views/plan/kept-plan.ts';
import { freshBrowser, openTestStore, value } from '../store/open-test-store.ts';

/** A Thursday; the invented week has five lots that close on this day. */
const NOW = instant(Date.UTC(2026, 10, 26, 17));
const TODAY = '2026-11-26' as LocalDate;
const BOISE = zone('America/Boise');
const CASH: PurseEntry = { cashCents: cents(2_600_000), countedAt: NOW, until: TODAY };

let time: Instant = NOW;
const world = { now: () => time, zone: () => BOISE };

beforeEach(() => {
  freshBrowser();
  time = NOW;
});

async function demo(): Promise<Store> {
  const store = await openTestStore({ now: () => time });
  let last: LotId | null = null;
  const scenario = demoScenario(NOW, () => {
    last = nextLotId(NOW, last, new Uint8Array(8).fill(7));
    return last;
  });
  expect(await loadDemo(store, scenario)).toBeNull();
  return store;
}

const made = async (store: Store) => {
  const now = await store.plan();
  if (now === null) throw new Error('no plan was made');
  return now;
};

test('without a purse there is no plan; with one there is, and it is not made again while it holds', async () => {
  const store = await demo();
  expect(await seeToPlan(store, world)).toBe(false);
  expect(await store.plan()).toBeNull();

  value(await store.setPurse(CASH));
  expect(await seeToPlan(store, world)).toBe(true);
  const { plan, holds } = await made(store);
  expect([holds, plan.changed, plan.madeAt]).toEqual([true, null, NOW]);
  time = instant(NOW + 1000);
  expect(await seeToPlan(store, world)).toBe(false);
  expect((await made(store)).plan.madeAt).toBe(NOW);

  value(await store.setPurse(null));
  expect((await made(store)).holds).toBe(false);
  expect(await seeToPlan(store, world)).toBe(true);
  expect(await store.plan()).toBeNull();
});

test('no planned bid is above its max bid, and lots after the purse’s time keep theirs without a plan', async () => {
  const store = await demo();
  value(await store.setPurse(CASH));
  await seeToPlan(store, world);
  const { plan } = await made(store);
  const planned = plannedBids(plan);
  expect(planned.size).toBeGreaterThan(2);
  const { of } = standingsUnder(wholeSetup(await store.setup(), BOISE), planned);
  let chances = 0;
  for (const lot of await store.allLots()) {
    const { maxBid, planned: bid, plannedChance } = of(lot);
    const row = plan.plan.rows.find(({ lotId }) => lotId === lot.id);
    if (plannedChance !== undefined) {
      chances += 1;
      expect(plannedChance).toBe(Math.round((row?.chance?.chance ?? Number.NaN) * 1_000_000));
    }
    if (typeof bid === 'number') expect(bid).toBeLessThanOrEqual(maxBid as Cents);
    const close = lot.facts.close?.instant ?? Number.POSITIVE_INFINITY;
    if (close > NOW + DAY) expect(planned.has(lot.id)).toBe(false);
  }
  expect(chances).toBeGreaterThan(2);
  expect(plan.closings.filter(({ close }) => close !== null).length).toBeGreaterThan(20);
});

test('a win takes its money and its place, and the plan says what changed and because of what', async () => {
  const store = await demo();
  value(await store.setPurse({ ...CASH, places: 2 }));
  await seeToPlan(store, world);
  const before = (await made(store)).plan;
  const [lot] = (await store.lotsByClose({ from: NOW })).filter(({ id }) => plannedBids(before).get(id)?.bid);
  if (lot === undefined) throw new Error('nothing is planned');

  time = instant(NOW + HOUR);
  value(await store.noteResult(lot.id, { result: { ended: 'won', hammerCents: cents(1_200_000) }, at: time }));
  expect((await made(store)).holds).toBe(false);
  expect(await seeToPlan(store, world)).toBe(true);
  const { plan } = await made(store);
  expect(plan.purse.placesTaken).toBe(1);
  expect(plan.purse.purse.places).toBe(1);
  // The price, the fees, transport and recon, of which the price alone is 12,000 dollars.
  expect(plan.purse.promised.cash).toBeGreaterThan(1_200_000);
  expect(plan.purse.purse.cash).toBe(CASH.cashCents - plan.purse.promised.cash);
  expect(plan.changed?.because.join(' ')).toContain('won at $12,000');
  expect(plan.changed?.changes.length).toBeGreaterThan(0);
});

test('a close that passes is a reason to plan anew, though nobody wrote anything, and what was planned is kept with the result', async () => {
  const store = await demo();
  value(await store.setPurse(CASH));
  await seeToPlan(store, world);
  const before = plannedBids((await made(store)).plan);
  // Nobody bid on it.
  const [next] = (await store.lotsByClose({ from: NOW })).filter(
    ({ id, facts }) => before.get(id)?.bid && facts.proxy === undefined,
  );
  const close = next?.facts.close?.instant;
  if (next === undefined || close === undefined) throw new Error('nothing is planned without a bid');
  time = instant(close + HOUR);
  expect((await made(store)).holds).toBe(true);
  await seeToPlan(store, world);
  const { plan } = await made(store);
  expect(plan.madeAt).toBe(time);
  expect(plan.bids.some(([id]) => id === next.id)).toBe(false);

  const setup = wholeSetup(await store.setup(), BOISE);
  const standings = standingsUnder(setup, plannedBids(plan));
  const act = { do: 'ended', result: { ended: 'lost', hammerCents: cents(1_200_000) } } as const;
  expect(await doLotAct(store, next, act, { setup, now: time, standings })).toMatchObject({ as: 'kept' });
  expect((await store.lot(next.id))?.sale?.result?.plannedCents).toBe(before.get(next.id)?.bid);
  await seeToPlan(store, world);
  expect((await made(store)).plan.atClose.some(([id]) => id === next.id)).toBe(false);
});

test('more promised than there is: a sentence, and nothing is planned', async () => {
  const store = await demo();
  value(await store.setPurse({ ...CASH, cashCents: cents(100_000) }));
  const [lot] = await store.lotsByClose({ from: NOW });
  time = instant(NOW + HOUR);
  if (lot === undefined) throw new Error('no lot');
  value(await store.noteResult(lot.id, { result: { ended: 'won', hammerCents: cents(1_200_000) }, at: time }));
  await seeToPlan(store, world);
  const { plan } = await made(store);
  expect(plan.purse.faults.join(' ')).toMatch(/^The purse is overdrawn: \$1\d,\d\d\d.* more is promised for won cars/);
  expect(plan.bids.filter(([, { bid }]) => bid !== null)).toEqual([]);
});

test('several looks in a row make one plan, and only a plan that bids otherwise is told', async () => {
  const store = await demo();
  value(await store.setPurse(CASH));
  const timers: (() => void)[] = [];
  let told = 0;
  let opened = 0;
  const failures: unknown[] = [];
  const see = planKeeper(
    {
      ...world,
      openStore: async () => {
        opened++;
        return { ok: true, value: { ...store, close: () => undefined } };
      },
      after: (_, then) => {
        timers.push(then);
        return () => timers.splice(timers.indexOf(then), 1);
      },
      report: (error) => failures.push(error),
    },
    () => told++,
  );
  see();
  see();
  see();
  expect(timers.length).toBe(1);
  for (const then of timers.splice(0)) then();
  await expect.poll(() => told, { timeout: 20_000 }).toBe(1);
  see();
  for (const then of timers.splice(0)) then();
  await expect.poll(() => opened).toBe(2);
  expect([told, failures]).toEqual([1, []]);
});
