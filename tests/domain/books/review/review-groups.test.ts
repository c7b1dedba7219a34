import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ReviewLot, reviewGroup, reviewGroups } from '../../../../src/domain/books/review/review-groups.ts';
import { cents } from '../../../../src/domain/money/cents.ts';
import { addDays } from '../../../../src/domain/time/calendar-day.ts';
import { day, dollars } from '../folder-test-car.ts';

const lot = (set: Partial<ReviewLot>): ReviewLot => ({
  day: day('2026-11-28'),
  venue: 'Saguaro Sale Yard',
  buyer: 'The buyer',
  ended: 'lost',
  bids: 1,
  hammer: null,
  maxBid: null,
  canceled: false,
  allIn: null,
  tiedUp: cents(0),
  openDisputes: 0,
  disputed: cents(0),
  expectedGross: null,
  actualGross: null,
  ...set,
});

test('a week of bids comes to its counts, its money and its averages, and a canceled sale to none of them but its own', () => {
  const lots = [
    lot({ ended: 'won', hammer: dollars(9000), maxBid: dollars(10_000), allIn: dollars(9500), tiedUp: dollars(9500) }),
    lot({ ended: 'won', canceled: true, hammer: dollars(7000), maxBid: dollars(8000), tiedUp: null }),
    lot({
      ended: 'won',
      hammer: dollars(9900),
      maxBid: dollars(11_000),
      allIn: dollars(10_400),
      expectedGross: dollars(2000),
      actualGross: dollars(1500),
    }),
    lot({ hammer: dollars(12_000), maxBid: dollars(11_000), openDisputes: 1, disputed: dollars(800) }),
    lot({ hammer: dollars(7500), maxBid: dollars(8000), bids: 0 }),
    lot({ ended: 'not-sold', bids: 0 }),
    lot({ ended: 'not-watched', bids: 2 }),
    lot({ day: day('2026-11-30'), venue: 'Fogline Motor Sale' }),
  ];
  const [first, second] = reviewGroups(lots, 'week');
  expect(first).toMatchObject({
    key: '2026-11-23',
    lots: 7,
    bidOn: 6,
    bids: 6,
    won: 2,
    canceled: 1,
    lost: 2,
    notSold: 1,
    unknown: 1,
    winRate: 0.5,
    hammer: dollars(18_900),
    allIn: dollars(19_900),
    billed: 2,
    tiedUpUnknown: 1,
    tiedUp: dollars(9500),
    paidOfMax: 18_900 / 21_000,
    wins: { under: 2, left: dollars(2100), leftEach: dollars(1050), at: 0, over: 0, overEach: null, notCompared: 0 },
    losses: {
      under: 1,
      left: dollars(500),
      leftEach: dollars(500),
      at: 0,
      over: 1,
      overEach: dollars(1000),
      notCompared: 0,
    },
    openDisputes: 1,
    disputed: dollars(800),
    sold: 1,
    expectedGross: dollars(2000),
    actualGross: dollars(1500),
  });
  expect(second).toMatchObject({
    key: '2026-11-30',
    lots: 1,
    winRate: 0,
    paidOfMax: null,
    losses: { under: 0, leftEach: null, overEach: null, notCompared: 1 },
    actualGross: null,
  });
  expect(reviewGroups(lots, 'month').map(({ key }) => key)).toEqual(['2026-11']);
  expect(reviewGroups(lots, 'venue').map(({ key, lots: count }) => [key, count])).toEqual([
    ['Fogline Motor Sale', 1],
    ['Saguaro Sale Yard', 7],
  ]);
});

test('by whatever it is grouped, the groups come to the whole', () => {
  const any = fc.record({
    day: fc.nat({ max: 90 }).map((days) => addDays(day('2026-09-01'), days)),
    venue: fc.constantFrom('a', 'b', 'c'),
    buyer: fc.constantFrom('x', 'y'),
    ended: fc.constantFrom(
      'won' as const,
      'lost' as const,
      'not-sold' as const,
      'withdrawn' as const,
      'pending' as const,
    ),
    hammer: fc.nat({ max: 10_000_000 }).map(cents),
    canceled: fc.boolean(),
  });
  fc.assert(
    fc.property(
      fc.array(any, { maxLength: 30 }),
      fc.constantFrom('week' as const, 'month' as const, 'venue' as const, 'buyer' as const),
      (sets, by) => {
        const lots = sets.map(lot);
        const whole = reviewGroup('all', lots);
        const groups = reviewGroups(lots, by);
        for (const key of ['lots', 'bidOn', 'won', 'lost', 'notSold', 'unknown', 'canceled', 'hammer'] as const)
          expect(groups.reduce((sum, group) => sum + group[key], 0)).toBe(whole[key]);
      },
    ),
  );
});
