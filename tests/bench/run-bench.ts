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
export async function timeBoth(
  ours: () => unknown,
  rival: () => unknown,
  rounds = ROUNDS,
): Promise<{ readonly ours: number; readonly rival: number }> {
  const times: { ours: number[]; rival: number[] } = { ours: [], rival: [] };
  for (let round = 0; round <= rounds; round++) {
    const [a, b] = [await timeOnce(ours), await timeOnce(rival)];
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
