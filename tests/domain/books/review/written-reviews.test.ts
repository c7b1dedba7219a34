import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type AgainstMax, type ReviewLot, reviewGroup } from '../../../../src/domain/books/review/review-groups.ts';
import { cents, ZERO } from '../../../../src/domain/money/cents.ts';
import type { Ending } from '../../../../src/domain/sale/result.ts';
import type { LocalDate } from '../../../../src/domain/time/local-date.ts';

// Written by somebody who had not read the code.
interface Side {
  readonly under: { readonly count: number; readonly dollarsLeft: string; readonly average: string | null };
  readonly atMax: { readonly count: number };
  readonly over: { readonly count: number; readonly average: string | null };
  readonly notCompared: number;
}
interface Written {
  readonly id: number;
  readonly title: string;
  readonly results: readonly {
    readonly outcome: string | null;
    readonly hammer: string | null;
    readonly maxBidThen: string | null;
    readonly allIn: string | null;
    readonly canceled: boolean;
  }[];
  readonly expected: {
    readonly won: number;
    readonly canceled: number;
    readonly lost: number;
    readonly notSold: number;
    readonly withdrawn: number;
    readonly noResult: number;
    readonly hammer: { readonly total: string };
    readonly allIn: { readonly total: string; readonly missing: number };
    readonly wins: Side;
    readonly losses: Side;
  };
}
const { sets }: { readonly sets: readonly Written[] } = JSON.parse(
  readFileSync('tests/fixtures/written-reviews.json', 'utf8'),
);
const ENDED: Readonly<Record<string, Ending>> = {
  won: 'won',
  lost: 'lost',
  'not sold': 'not-sold',
  withdrawn: 'withdrawn',
};
const money = (text: string | null) => (text === null ? null : cents(Math.round(Number(text) * 100)));
const side = ({ under, atMax, over, notCompared }: Side): AgainstMax => ({
  under: under.count,
  left: money(under.dollarsLeft) ?? ZERO,
  leftEach: money(under.average),
  at: atMax.count,
  over: over.count,
  overEach: money(over.average),
  notCompared,
});

test.each(sets.map((set) => [set.id, set.title, set] as const))(
  'the review of set %i: %s',
  (_, __, { results, expected }) => {
    const lots = results.map(
      (one): ReviewLot => ({
        ...{ day: '2026-12-01' as LocalDate, venue: 'Saguaro Flats', buyer: 'Buyer', bids: 1, tiedUp: ZERO },
        ...{ openDisputes: 0, disputed: ZERO, expectedGross: null, actualGross: null },
        ended: ENDED[one.outcome ?? ''] ?? 'not-watched',
        canceled: one.canceled,
        hammer: money(one.hammer),
        maxBid: money(one.maxBidThen),
        allIn: one.canceled ? null : money(one.allIn),
      }),
    );
    expect(reviewGroup('all', lots)).toMatchObject({
      won: expected.won,
      canceled: expected.canceled,
      lost: expected.lost,
      notSold: expected.notSold + expected.withdrawn,
      unknown: expected.noResult,
      hammer: money(expected.hammer.total),
      allIn: money(expected.allIn.total),
      billed: expected.won - expected.allIn.missing,
      wins: side(expected.wins),
      losses: side(expected.losses),
    });
  },
);
