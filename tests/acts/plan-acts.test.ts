import { expect, test } from 'vitest';
import type { BidMade } from '../../src/acts/act.ts';
import type { Circumstances, Decision } from '../../src/acts/circumstances.ts';
import { decide } from '../../src/acts/decide.ts';
import { openBid } from '../../src/domain/bid/bid-state-of.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { bidGiven } from '../../src/folds/bid-given.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { type BidEvent, BidHistory } from '../views/lots/bid-history.ts';

const dollars = (amount: number): Cents => cents(amount * 100);
const now = instant(Date.UTC(2026, 5, 5, 12));
const born: BidEvent = { at: '2026-06-05T00:00:00Z', kind: 'lot-added', close: '2026-06-05T23:00:00Z', increment: 100 };
const { lot } = new BidHistory([born]);

function decided(one: LotState, act: Parameters<typeof decide>[1], planned: Cents | null | undefined): Decision {
  const maxBid = dollars(10_000);
  const circumstances: Circumstances = {
    now,
    author: 'buyer',
    people: [],
    setup: { store: { name: '', zone: zone('America/Boise') } } as Pick<Setup, 'alerts' | 'store'>,
    work: (of) => ({
      maxBid,
      planned,
      plannedChance: 200_000,
      increments: undefined,
      bid: openBid(bidGiven(of, { maxBid, planned, increments: undefined }), now),
    }),
  };
  return decide(one, act, circumstances);
}
const bid = (amount: number, more: Partial<BidMade> = {}): BidMade => ({
  do: 'bid',
  how: 'proxy',
  cents: dollars(amount),
  ...more,
});

test('a bid is kept with what was planned when it was placed', () => {
  const made = decided(lot, bid(9000), dollars(9000));
  expect(made).toMatchObject({
    as: 'write',
    changes: [{ happening: { kind: 'bid-noted', bid: { maxBidCents: dollars(10_000), plannedCents: dollars(9000) } } }],
  });
  const bare = decided(lot, bid(9000), undefined);
  expect(JSON.stringify(bare)).not.toContain('planned');
});

test('the chance is kept only with the very bid that it was worked out for', () => {
  const kept = (amount: number) => {
    const made = decided(lot, bid(amount), dollars(9000));
    return made.as === 'write' ? made.changes[0]?.happening : undefined;
  };
  expect(kept(9000)).toMatchObject({ kind: 'bid-noted', bid: { chancePpm: 200_000 } });
  expect(kept(8900)).toMatchObject({ kind: 'bid-noted', bid: { plannedCents: dollars(9000) } });
  expect(JSON.stringify(kept(8900))).not.toContain('chance');
});

test('a bid well over plan is asked about once, and what is answered is kept with the plan ignored for the lot', () => {
  const asked = decided(lot, bid(9800), dollars(9000));
  expect(asked).toMatchObject({
    as: 'ask',
    question: { code: 'over-plan', words: '$9,800 is $800 over plan. Bid on it without the plan?' },
  });
  if (asked.as !== 'ask') return;
  const [yes, placed] = asked.question.choices.map(({ act }) => act);
  const kept = yes && decided(lot, yes, dollars(9000));
  expect(kept).toMatchObject({
    as: 'write',
    changes: [{ happening: { kind: 'bid-noted' } }, { happening: { kind: 'plan-choice', choice: 'plan-ignored' } }],
  });
  expect(placed).toMatchObject({ cents: dollars(9000) });
});

test('a bid on a lot that the plan leaves out is asked about, and offers no other amount', () => {
  const asked = decided(lot, bid(5000), null);
  expect(asked).toMatchObject({
    as: 'ask',
    question: { words: 'The plan leaves this lot out. Bid on it without the plan?' },
  });
  if (asked.as === 'ask') expect(asked.question.choices.map(({ leads }) => leads)).toEqual(['do', 'edit']);
});

test('pinning is one entry, and pinning twice is none', () => {
  expect(decided(lot, { do: 'plan', choice: 'pinned' }, undefined)).toMatchObject({
    as: 'write',
    changes: [{ happening: { kind: 'plan-choice', choice: 'pinned' } }],
    words: 'pinned in the plan',
  });
  expect(decided({ ...lot, planChoice: 'pinned' }, { do: 'plan', choice: 'pinned' }, undefined).as).toBe('nothing');
  expect(decided(lot, { do: 'plan', choice: null }, undefined).as).toBe('nothing');
});

test('no risk is accepted for a bid that is over plan alone', () => {
  const { lot: placed } = new BidHistory([
    born,
    { at: '2026-06-05T01:00:00Z', kind: 'proxy-placed', amount: 9800, by: 'buyer' },
  ]);
  expect(decided(placed, { do: 'accept-risk', why: 'I want it' }, dollars(9000)).as).toBe('refuse');
});

test('a result is kept with what was planned at the close, also where nobody bid, and a correction keeps that word', () => {
  const ended = { do: 'ended', result: { ended: 'lost', hammerCents: dollars(9_400) }, early: true } as const;
  const kept = (planned: Cents | null | undefined) => {
    const made = decided(lot, ended, planned);
    return made.as === 'write' ? made.changes.at(-1)?.happening : made;
  };
  expect(kept(dollars(9_100))).toMatchObject({ kind: 'result-noted', plannedCents: dollars(9_100) });
  expect(kept(null)).toMatchObject({ kind: 'result-noted', plannedCents: null });
  expect(JSON.stringify(kept(undefined))).not.toContain('planned');
});
