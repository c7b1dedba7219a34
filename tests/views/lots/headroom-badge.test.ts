import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { headroomBadge } from '../../../src/views/lots/headroom-badge.ts';

const badge = (headroom: number | null, maxBid: number | null) =>
  headroomBadge({
    headroom: headroom === null ? null : cents(headroom),
    maxBid: maxBid === null ? null : cents(maxBid),
  });

test.each([
  [null, null, '✓', /is on your list/],
  [null, 972_500, '✓', /stop at \$9,725/],
  [32_599, 972_500, '+325', /\$325\.99 left/],
  [0, 972_500, '+0', /\$0 left/],
  [159_900, 972_500, '+1.5k', /\$1,599 left/],
  [1_299_900, 2_972_500, '+12k', /left/],
  [-40_000, 972_500, '−400', /\$400 over max/],
])('of %s with a max bid of %s is short and never more than there is', (headroom, maxBid, text, title) => {
  const shown = badge(headroom, maxBid);
  expect(shown.text).toBe(text);
  expect(shown.title).toMatch(title);
});
