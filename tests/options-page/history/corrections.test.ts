import { expect, test } from 'vitest';
import { correctionsIn } from '../../../options-page/history/corrections.ts';
import type { HistoryItem } from '../../../src/store/journal/history.ts';

/** A result, an undone result (small letter), or something else. */
function history(marks: string): HistoryItem[] {
  return [...marks].map((mark, i) => {
    const kind = mark.toLowerCase() === 'r' ? 'result-noted' : 'lot-dropped';
    const item = { id: `${i}`, counts: mark !== 'r', read: { as: 'known', entry: { happening: { kind } } } };
    return item as unknown as HistoryItem;
  });
}

test.each([
  ['R', []],
  ['-R-R', ['3']],
  ['RRR', ['1', '2']],
  // A result that was taken back leaves nothing to correct.
  ['rR', []],
  ['rRR', ['2']],
  ['Rr', ['1']],
])('of %s the corrections are %o', (marks, corrections) => {
  expect([...correctionsIn(history(marks))]).toEqual(corrections);
});
