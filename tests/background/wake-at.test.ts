import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';

const NOW = instant(Date.UTC(2026, 10, 28, 19));
let set: Map<string, number>;

beforeEach(() => {
  set = new Map();
  vi.resetModules();
  vi.stubGlobal('chrome', {
    alarms: {
      get: async (name: string) => (set.has(name) ? { name, scheduledTime: set.get(name) } : undefined),
      create: async (name: string, { when }: { when: number }) => void set.set(name, when),
    },
  });
});
afterEach(() => vi.unstubAllGlobals());

const wakeAt = async (when: number, now: number) =>
  (await import('../../src/browser/alarms.ts')).wakeAt('call', instant(when), instant(now));

test('an alarm is set for its time, and half a minute ahead when that is nearer', async () => {
  await wakeAt(NOW + 90_000, NOW);
  expect(set.get('call')).toBe(NOW + 90_000);
  await wakeAt(NOW + 10_000, NOW);
  expect(set.get('call')).toBe(NOW + 30_000);
});

test('a look shortly before a call does not put its alarm off', async () => {
  await wakeAt(NOW + 40_000, NOW);
  await wakeAt(NOW + 40_000, NOW + 25_000);
  expect(set.get('call')).toBe(NOW + 40_000);
});

test('an alarm for another time never stands in for it', async () => {
  await wakeAt(NOW + 20_000, NOW - 60_000);
  await wakeAt(NOW + 25_000, NOW);
  expect(set.get('call')).toBe(NOW + 30_000);
});
