import { beforeEach, expect, test } from 'vitest';
import { lookout } from '../../src/background/look-again.ts';
import type { World } from '../../src/background/world.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { freshBrowser } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, lotsClosing, setUp } from './invented-saturday.ts';

const CLOSE = at('2026-11-28', '16:00');
const SOON = 12_000;

beforeEach(() => freshBrowser());

test('a call nearer than any alarm gets one timer, however many looks are taken meanwhile, and comes in time', async () => {
  const browser = new InventedBrowser(CLOSE - 5 * MINUTE - SOON);
  await setUp(browser, lotsClosing([CLOSE]));
  const timers = new Map<number, { readonly ms: number; readonly then: () => void }>();
  const titles: string[] = [];
  let now: Instant = browser.wallClock();
  let count = 0;
  const world: World = {
    now: () => now,
    zone: () => zone('America/Boise'),
    openStore: async () => ({ ok: true, value: await browser.store() }),
    noticesAllowed: async () => true,
    noticeIds: async () => [],
    showNotice: async ({ title }) => void titles.push(title),
    clearNotice: async () => undefined,
    wakeAt: async () => undefined,
    cancelWake: async () => undefined,
    showBadge: async () => undefined,
    recall: async () => undefined,
    remember: async () => undefined,
    report: (error) => {
      throw error;
    },
    after: (ms, then) => {
      const timer = ++count;
      timers.set(timer, { ms, then });
      return () => timers.delete(timer);
    },
  };
  const { lookAgain } = lookout(world);
  for (let look = 0; look < 3; look++) await lookAgain();
  titles.length = 0;
  expect([...timers.values()].map(({ ms }) => ms)).toEqual([SOON]);
  now = instant(now + SOON);
  for (const { then } of timers.values()) then();
  // One look after the other: when this one has ended, so has the timer's.
  await lookAgain();
  expect(titles).toEqual([expect.stringContaining('closes in 5 min')]);
});
