import { openThisStore } from '../store/open-this-store.ts';
import type { PlanAnswer, PlanJob } from './plan-apart.ts';
import { seeToPlan } from './plan-keeper.ts';

/** The thread on which a background that is a page makes its plans: it takes one job, answers, and is ended. */
self.onmessage = async ({ data }: MessageEvent<PlanJob>) => {
  self.postMessage(await answerOf(data));
};

async function answerOf({ now, zone, store }: PlanJob): Promise<PlanAnswer> {
  try {
    const opened = await openThisStore(undefined, store);
    if (!opened.ok) return { failed: opened.message };
    const world = { now: () => now, zone: () => zone };
    return { changed: await seeToPlan(opened.value, world).finally(() => opened.value.close()) };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}
