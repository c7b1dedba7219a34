import { existsSync, readFileSync } from 'node:fs';

/** How long this thread has worked, in milliseconds, without what other work on the machine took from it. */
export function worked(): number {
  // Where the system does not say, the clock has to do.
  if (!existsSync(SCHEDULED)) return performance.now();
  return Number(readFileSync(SCHEDULED, 'latin1').split(' ')[0]) / 1e6;
}
const SCHEDULED = '/proc/thread-self/schedstat';
