import { afterEach, expect, test, vi } from 'vitest';
import { type PlanAnswer, type PlanJob, planApart } from '../../src/background/plan-apart.ts';
import { planKeeper } from '../../src/background/plan-keeper.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { freshBrowser, openTestStore, value } from '../store/open-test-store.ts';

afterEach(() => vi.unstubAllGlobals());

const JOB: PlanJob = { now: instant(7), zone: zone('America/Boise') };

/** A thread that answers as it is told. */
function threadThat(
  answer: (thread: { onmessage?: (event: object) => void; onerror?: (event: object) => void }) => void,
) {
  const seen = { jobs: [] as PlanJob[], files: [] as string[], ended: 0 };
  class Thread {
    onmessage?: (event: object) => void;
    onerror?: (event: object) => void;
    constructor(file: string) {
      seen.files.push(file);
    }
    postMessage(job: PlanJob) {
      seen.jobs.push(job);
      answer(this);
    }
    terminate() {
      seen.ended++;
    }
  }
  vi.stubGlobal('Worker', Thread);
  return seen;
}
const says = (data: PlanAnswer) => threadThat((thread) => thread.onmessage?.({ data }));

test('a background that can’t start a thread makes the plan on its own', () => {
  vi.stubGlobal('Worker', undefined);
  expect(planApart()).toBeUndefined();
});

test('a background that is a page has the plan made on a thread from the package, which ends with its answer', async () => {
  const seen = says({ changed: true });
  expect(await planApart()?.(JOB)).toBe(true);
  expect(seen).toEqual({ jobs: [JOB], files: ['/plan-worker.js'], ended: 1 });
});

test('a thread that fails is told and ended', async () => {
  const seen = says({ failed: 'The disk is full.' });
  await expect(planApart()?.(JOB)).rejects.toThrow('The disk is full.');
  expect(seen.ended).toBe(1);
  threadThat((thread) => thread.onerror?.({ message: 'no such file' }));
  await expect(planApart()?.(JOB)).rejects.toThrow('no such file');
});

test('a thread is started only where there is a plan to be made', async () => {
  freshBrowser();
  const store = await openTestStore({ now: () => JOB.now });
  const jobs: PlanJob[] = [];
  const timers: (() => void)[] = [];
  let opened = 0;
  const see = planKeeper(
    {
      now: () => JOB.now,
      zone: () => JOB.zone,
      storeName: 'demo',
      openStore: async () => {
        opened++;
        return { ok: true, value: { ...store, close: () => undefined } };
      },
      after: (_, then) => {
        timers.push(then);
        return () => undefined;
      },
      report: () => undefined,
      planApart: async (job) => {
        jobs.push(job);
        return false;
      },
    },
    () => undefined,
  );
  const look = async () => {
    see();
    const before = opened;
    for (const then of timers.splice(0)) then();
    await expect.poll(() => opened).toBe(before + 1);
  };
  await look();
  expect(jobs).toEqual([]);
  value(await store.setPurse({ cashCents: cents(1_000_000), countedAt: JOB.now, until: 'weekend' }));
  await look();
  await expect.poll(() => jobs).toEqual([{ ...JOB, store: 'demo' }]);
});
