/** One line of a benchmark: what was measured, both sides in milliseconds, and whether their ratio keeps the limit. */
export interface BenchRow {
  readonly what: string;
  readonly ours: number;
  readonly rival: number;
  readonly ratio: number;
  /** In words: `at least 20`, `at most 1.5`. */
  readonly limit: string;
  readonly ok: boolean;
}

const ROUNDS = 7;

/**
 * Times two ways to the same end, taking turns so that both meet the same weather on the machine; gives back each one's
 * median in milliseconds. The first round of each is for warming up and does not count.
 */
export function timeBoth(ours: () => unknown, rival: () => unknown, rounds = ROUNDS): Promise<BothTimes> {
  return measureBoth(
    () => timeOnce(ours),
    () => timeOnce(rival),
    rounds,
  );
}

interface BothTimes {
  readonly ours: number;
  readonly rival: number;
}

/** As timeBoth, for two ways that tell their times themselves. */
export async function measureBoth(
  ours: () => Promise<number>,
  rival: () => Promise<number>,
  rounds = ROUNDS,
): Promise<BothTimes> {
  const times: { ours: number[]; rival: number[] } = { ours: [], rival: [] };
  for (let round = 0; round <= rounds; round++) {
    const [a, b] = [await ours(), await rival()];
    if (round === 0) continue;
    times.ours.push(a);
    times.rival.push(b);
  }
  return { ours: median(times.ours), rival: median(times.rival) };
}

/** The middle value; of an even number of values the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const [low = Number.NaN, high = Number.NaN] = [sorted[Math.ceil(middle) - 1], sorted[Math.floor(middle)]];
  return (low + high) / 2;
}

async function timeOnce(task: () => unknown): Promise<number> {
  const started = performance.now();
  await task();
  return performance.now() - started;
}

/** A row whose two sides are times, of which ours may be at most `most` times the rival's. */
export function atMost(most: number, what: string, ours: number, rival: number): BenchRow {
  const ratio = ours / rival;
  return { what, ours, rival, ratio, limit: `at most ${most}`, ok: ratio <= most };
}
