import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lotIdSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import { doneAt, sayHappening } from '../../../src/views/history/say-happening.ts';
import { changeFor, tellingOf } from '../../folds/journal-arbitrary.ts';

const AT = instant(Date.UTC(2026, 3, 10));

test.each<[Happening, string]>([
  [
    { kind: 'bid-noted', bid: { action: 'proxy-raised', cents: cents(1_250_000), at: AT, by: 'the manager' } },
    'Proxy raised to $12,500, by the manager',
  ],
  [{ kind: 'bid-noted', bid: { action: 'confirmation-seen', at: AT } }, 'Confirmation seen'],
  [
    {
      kind: 'result-noted',
      result: { ended: 'won', hammerCents: cents(985_000) },
      at: AT,
      by: 'live',
      maxBidCents: cents(990_000),
    },
    'Won at $9,850, bid live, max bid then $9,900',
  ],
  [{ kind: 'result-noted', result: { ended: 'lost' }, at: AT, maxBidCents: null }, 'Lost, price unknown'],
  [
    { kind: 'result-noted', result: { ended: 'lost' }, at: AT, plannedCents: cents(940_000) },
    'Lost, price unknown, planned bid then $9,400',
  ],
  [
    { kind: 'result-noted', result: { ended: 'lost' }, at: AT, plannedCents: null },
    'Lost, price unknown, left out by the plan then',
  ],
  [
    { kind: 'lot-changed', set: { priceNow: cents(900_000), year: 2021 }, clear: ['miles'], evidence: {} },
    'Price now: $9,000; Year: 2021; Miles: cleared',
  ],
  [{ kind: 'lot-dropped' }, 'Removed from the list'],
])('%o', (happening, words) => {
  expect(sayHappening(happening)).toBe(words);
});

test('whatever happens is said in words, without a gap in them', () => {
  fc.assert(
    fc.property(tellingOf(), (telling) => {
      const words = sayHappening(changeFor(telling, [], () => lotIdSchema.parse('0'.repeat(26))).happening);
      // A change that changes nothing says nothing.
      expect(words).not.toMatch(/undefined|\[object|^[^A-Z\d]/);
    }),
    { numRuns: 500 },
  );
});

test('the moment that is stated is told apart from the one in which it was written', () => {
  const bid: Happening = { kind: 'bid-noted', bid: { action: 'live-bid', at: AT } };
  expect(doneAt(bid, instant(AT + 59_000))).toBeNull();
  expect(doneAt(bid, instant(AT + 3_600_000))).toBe(AT);
  expect(doneAt({ kind: 'lot-dropped' }, AT)).toBeNull();
});
