import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type BidEvent, BidHistory } from './bid-history.ts';
import { look, tellsTheSame } from './every-door.ts';

const START = Date.UTC(2026, 5, 4, 15);
const HOUR = 3_600_000;
const at = (hours: number) => new Date(START + hours * HOUR).toISOString();

const amount = fc.integer({ min: 80, max: 140 }).map((hundreds) => hundreds * 100);
const by = fc.constantFrom('buyer', 'manager');
const why = fc.option(fc.constant('A customer has put money down on this van'), { nil: undefined });

/** Anything that can happen to a bid, in any order that people and pages bring about. */
const happening: fc.Arbitrary<Omit<BidEvent, 'at'>> = fc.oneof(
  fc.record({ kind: fc.constant('price-now'), amount, from: fc.constantFrom('page', 'typed') }),
  fc.record({ kind: fc.constant('max-bid'), amount: fc.oneof(amount, fc.constantFrom(0, null)) }),
  fc.record({ kind: fc.constantFrom('proxy-placed', 'proxy-raised', 'proxy-cut', 'live-bid'), amount, by, why }),
  fc.record({ kind: fc.constant('proxy-withdrawn'), by }),
  fc.record({ kind: fc.constant('bid-confirmed'), amount, says: fc.constantFrom('accepted', 'high bidder'), by }),
  fc.record({ kind: fc.constant('close-moved'), close: fc.integer({ min: 20, max: 60 }).map(at) }),
  fc.record({
    kind: fc.constant('result'),
    outcome: fc.constantFrom('won', 'lost', 'no-sale', 'withdrawn', 'unknown', 'canceled'),
    amount,
    by,
  }),
);

const history = fc
  .record({
    sale: fc.constantFrom<'open' | 'sealed'>('open', 'open', 'open', 'sealed'),
    close: fc.option(fc.constant(at(48)), { nil: null, freq: 8 }),
    doubt: fc.boolean(),
    later: fc.array(fc.tuple(fc.integer({ min: 1, max: 50 }), happening), { maxLength: 12 }),
    lookAt: fc.integer({ min: 1, max: 60 }),
  })
  .map(({ sale, close, doubt, later, lookAt }) => {
    const added: BidEvent = {
      at: at(0),
      kind: 'lot-added',
      close,
      increment: 100,
      sale,
      ...(doubt && { otherClose: at(50), doubtful: true }),
    };
    const events = later.map(([hours, one]): BidEvent => ({ ...one, at: at(hours) }));
    return { events: [added, ...events], lookAt: START + lookAt * HOUR };
  });

test('every door tells the one state of a bid, whatever happened', () => {
  fc.assert(
    fc.property(history, ({ events, lookAt }) => {
      tellsTheSame(look(new BidHistory(events), lookAt));
    }),
    { numRuns: 400 },
  );
});

test('a bid that stands is never told while a price above it was seen since, nor one over max as settled without a reason', () => {
  fc.assert(
    fc.property(history, ({ events, lookAt }) => {
      const played = new BidHistory(events);
      const { state } = look(played, lookAt);
      if (state.is === 'standing') {
        const { price, bid, own } = state;
        const passed = price !== undefined && price.seenAt >= bid.at && price.cents > bid.cents;
        // Only the venue's own word, after that price, can say that we lead.
        expect(passed && own.word === undefined).toBe(false);
        expect(typeof played.maxBid === 'number' && played.maxBid > 0 ? bid.cents <= played.maxBid : true).toBe(true);
      }
      if (state.is === 'over-max' && state.bid.why === undefined) expect(state.loud).toBe(true);
    }),
    { numRuns: 400 },
  );
});
