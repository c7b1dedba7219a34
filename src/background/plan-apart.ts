import type { Instant } from '../domain/time/instant.ts';
import type { Zone } from '../domain/time/zone.ts';

/** A plan to be made on a thread of its own. */
export interface PlanJob {
  readonly now: Instant;
  readonly zone: Zone;
  /** Name of the store, where it is not the dealer's own. */
  readonly store?: string;
}

/** What comes back: whether bids changed, or why it could not be made. */
export type PlanAnswer = { readonly changed: boolean } | { readonly failed: string };

/**
 * Makes the plan on a thread of its own where the background is a page, as in Firefox: every page of the extension shares that
 * one's thread, and a plan takes up to a second. Undefined where the background is a service worker, which is a thread of its
 * own already and can't start another.
 * @throws when the thread can't be started or fails; then nothing was written, and the next look finds it to be done
 */
export function planApart(): ((job: PlanJob) => Promise<boolean>) | undefined {
  if (typeof Worker !== 'function') return undefined;
  return (job) =>
    new Promise<boolean>((resolve, reject) => {
      const thread = new Worker('/plan-worker.js', { type: 'module' });
      const end = () => thread.terminate();
      thread.onerror = (event) => {
        end();
        reject(new Error(`The plan's thread failed: ${event.message}`));
      };
      thread.onmessage = ({ data }: MessageEvent<PlanAnswer>) => {
        end();
        if ('failed' in data) reject(new Error(`The plan's thread failed: ${data.failed}`));
        else resolve(data.changed);
      };
      thread.postMessage(job);
    });
}
