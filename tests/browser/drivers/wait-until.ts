/** How long a condition may take; generous, because test machines are busy. */
const PATIENCE_MS = 40_000;
/** The pause after the first look; each later one is longer by a quarter, up to the longest: every look costs work, too. */
const PAUSE_MS = 50;
const LONGEST_PAUSE_MS = 400;

/**
 * Asks again and again until the answer is truthy, and gives it back. Throws with `what` in words when it never is.
 * An error in asking counts as "not yet" (a page may be on its way elsewhere) and is told as the cause in the end.
 */
export async function waitUntil<Answer>(
  what: string,
  ask: () => Promise<Answer>,
  patienceMs = PATIENCE_MS,
): Promise<NonNullable<Answer>> {
  const end = performance.now() + patienceMs;
  let cause: unknown;
  let pauseMs = PAUSE_MS;
  do {
    try {
      const answer = await ask();
      if (answer) return answer;
      cause = undefined;
    } catch (error) {
      cause = error;
    }
    await new Promise((resolve) => setTimeout(resolve, pauseMs));
    pauseMs = Math.min(pauseMs * 1.25, LONGEST_PAUSE_MS);
  } while (performance.now() < end);
  throw new Error(`waited ${patienceMs / 1000} s in vain for ${what}`, { cause });
}
