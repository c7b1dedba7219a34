import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Buyable, hindsight } from '../../../src/domain/learn/money/hindsight.ts';
import type { LostLot } from '../../../src/domain/learn/money/lost-lot.ts';
import { averageWalk, type ProfitWalk, WALK_PARTS } from '../../../src/domain/learn/money/profit-walk.ts';
import { saleWeek, type WeekLot } from '../../../src/domain/learn/money/sale-week.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { chances } from './cases.ts';

const MONDAY = '2026-11-23' as LocalDate;
const rationed: LostLot = { because: 'rationing', needed: cents(900_000), profit: cents(240_000) };
const lot = (name: string, won: boolean, cash: number, profit: number, lost?: LostLot): WeekLot => ({
  lot: name,
  won,
  cash: cents(cash * 100),
  line: cents(0),
  profit: cents(profit * 100),
  lost,
});

describe('a week against hindsight', () => {
  test('as worked by hand: $20,000 and two places, of which $3,000 was made and $4,200 could have been', () => {
    const lots = [
      lot('A', true, 10_500, 1800),
      lot('B', true, 8000, 1200),
      lot('C', false, 9500, 2400, rationed),
      lot('D', false, 12_000, 900),
    ];
    const week = saleWeek(MONDAY, lots, { cash: 2_000_000, line: 0, places: 2 });
    expect(week).toMatchObject({ won: 2, achieved: 300_000, best: 420_000, bestLots: ['A', 'C'] });
    expect(week.score).toBeCloseTo(0.714, 3);
    expect(week.rationing).toEqual([{ lot: 'C', gross: 240_000, net: 120_000 }]);
  });

  test('of which nobody said what there was to spend is held against the money that was spent', () => {
    const lots = [lot('A', true, 10_000, 1000), lot('B', false, 9000, 1500), lot('C', false, 8000, 400)];
    expect(saleWeek(MONDAY, lots, null)).toMatchObject({ ofPurse: false, achieved: 100_000, best: 150_000 });
  });

  test('in which nothing could have been earned has no score', () => {
    expect(saleWeek(MONDAY, [lot('A', false, 9000, -200)], { cash: 2_000_000, line: 0, places: 3 }).score).toBeNull();
  });

  test('never scores above 1, whatever was bought', () => {
    const some = fc.record({ cash: fc.nat(2000), profit: fc.integer({ min: -300, max: 900 }), won: fc.boolean() });
    fc.assert(
      fc.property(fc.array(some, { maxLength: 12 }), fc.nat(4000), fc.nat(4), (all, cash, places) => {
        const lots = all.map((one, i) => lot(`${i}`, one.won, one.cash, one.profit));
        const { score } = saleWeek(MONDAY, lots, { cash: cash * 100, line: 0, places });
        expect(score ?? 0).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });
});

describe('the best choice of lots', () => {
  test('is the best of all choices there are, under three limits', () => {
    const some: fc.Arbitrary<Buyable> = fc.record({
      cash: fc.nat(60),
      line: fc.nat(60),
      profit: fc.integer({ min: -10, max: 50 }),
    });
    fc.assert(
      fc.property(
        fc.array(some, { maxLength: 11 }),
        fc.nat(150),
        fc.nat(150),
        fc.nat(6),
        (lots, cash, line, places) => {
          let best = 0;
          for (let set = 0; set < 1 << lots.length; set++) {
            const taken = lots.filter((_, i) => (set >> i) & 1);
            const sum = (of: (one: Buyable) => number) => taken.reduce((so, one) => so + of(one), 0);
            const fits = taken.length <= places && sum((one) => one.cash) <= cash && sum((one) => one.line) <= line;
            if (fits)
              best = Math.max(
                best,
                sum((one) => one.profit),
              );
          }
          const found = hindsight(lots, { cash, line, places });
          expect(found.profit).toBe(best);
          expect(found.chosen.reduce((sum, i) => sum + (lots[i]?.profit ?? 0), 0)).toBe(best);
        },
      ),
      { numRuns: 150 },
    );
  });

  test('of a hundred lots is found quickly', () => {
    const random = chances(2);
    for (let run = 0; run < 5; run++) {
      const lots = Array.from({ length: 100 }, () => {
        const price = 400_000 + Math.floor(1_600_000 * random());
        return {
          cash: Math.floor(price * 0.3),
          line: Math.floor(price * 0.7),
          profit: Math.floor(400_000 * random() ** 2),
        };
      });
      const began = performance.now();
      hindsight(lots, { cash: 4_000_000, line: 9_000_000, places: 12 });
      expect(performance.now() - began).toBeLessThan(2000);
    }
  });
});

describe('the average car', () => {
  test('closes to the cent, whatever the cars', () => {
    const amount = fc.integer({ min: -500_000, max: 500_000 });
    const walk = fc
      .tuple(amount, fc.array(amount, { minLength: WALK_PARTS.length, maxLength: WALK_PARTS.length }))
      .map(([expected, amounts]): ProfitWalk => {
        const parts = Object.fromEntries(
          WALK_PARTS.map((part, i) => [part, cents(amounts[i] ?? 0)]),
        ) as ProfitWalk['parts'];
        return {
          expected: cents(expected),
          parts,
          actual: cents(amounts.reduce((sum, one) => sum + one, expected)),
          unbilled: [],
        };
      });
    fc.assert(
      fc.property(fc.array(walk, { minLength: 1, maxLength: 20 }), (walks) => {
        const average = averageWalk(walks);
        if (average === null) throw new Error('there are cars');
        expect(WALK_PARTS.reduce((sum, part) => sum + average.parts[part], average.expected as number)).toBe(
          average.actual,
        );
        expect(average.actual).toBe(Math.round(walks.reduce((sum, one) => sum + one.actual, 0) / walks.length));
      }),
    );
    expect(averageWalk([])).toBeNull();
  });
});
