/** A file with more different values than this does not repeat itself, and remembering them would only take room. */
const MOST = 20_000;

/**
 * Remembers what was worked out for a key: a file of 50,000 rows says a few hundred closings and a dozen venues over and
 * over.
 */
export function memory<Answer>(): (key: string, work: () => Answer) => Answer {
  const known = new Map<string, Answer>();
  return (key, work) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = work();
    if (known.size >= MOST) known.clear();
    known.set(key, answer);
    return answer;
  };
}
