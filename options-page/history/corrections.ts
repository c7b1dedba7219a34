import type { HistoryItem } from '../../src/store/journal/history.ts';

/** The ids of the results that correct an earlier one: every result after the first one that was not undone. */
export function correctionsIn(history: readonly HistoryItem[]): ReadonlySet<string> {
  const found = new Set<string>();
  let stands = false;
  for (const { id, read, counts } of history) {
    if (read.as !== 'known' || read.entry.happening.kind !== 'result-noted') continue;
    if (stands) found.add(id);
    stands ||= counts;
  }
  return found;
}
