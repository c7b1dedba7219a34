import { beforeEach, describe, expect, test } from 'vitest';
import { holdFactorsFor } from '../../../src/domain/carrying/hold-factors.ts';
import { lostLot } from '../../../src/domain/learn/money/lost-lot.ts';
import { missesOf } from '../../../src/domain/learn/money/misses.ts';
import { profitWalk, WALK_PARTS } from '../../../src/domain/learn/money/profit-walk.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { FACTOR_UNIT } from '../../../src/domain/money/rate.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, value } from '../../store/open-test-store.ts';
import { CLOSE, ended, learnStore, past, SETUP, TODAY } from './learn-store.ts';

let there: Awaited<ReturnType<typeof learnStore>>;
beforeEach(async () => {
  freshBrowser();
  there = await learnStore();
});

const day = (text: string) => text as LocalDate;
const won = (hammer: number) => ended(there, { ended: 'won', hammerCents: cents(hammer) });
const lost = (hammer: number) => ended(there, { ended: 'lost', hammerCents: cents(hammer) });

async function book(
  lot: LotId,
  cost: 'hammer' | 'fee' | 'transport' | 'recon' | 'other',
  label: string,
  amount: number,
) {
  const paid = cost === 'hammer' || cost === 'fee' ? 'owed' : 'bank';
  const line = { lot, cost, label, cents: cents(amount) };
  value(await there.store.book({ kind: 'costs-booked', date: day('2026-12-01'), paid, lines: [line] }));
}
const sell = async (lot: LotId, price: number, date = '2026-12-24') =>
  value(
    await there.store.book({ kind: 'outcome-booked', lot, date: day(date), priceCents: cents(price), buyer: 'retail' }),
  );

const first = async () => at((await past(there.store)).past, 0);

describe('where the money of a car went', () => {
  test('goes from the profit that was expected to what became of it, part by part, to the cent', async () => {
    const lot = await won(1_240_000);
    await book(lot, 'hammer', 'Car', 1_240_000);
    await book(lot, 'fee', 'Buy fee', 43_400);
    await book(lot, 'transport', 'Freight', 30_000);
    await book(lot, 'recon', 'Tires', 71_000);
    await book(lot, 'other', 'Storage', 6000);
    await sell(lot, 1_710_000);
    const one = await first();
    const walk = profitWalk(one);
    const { deal } = one.forecast;
    if (walk === null || deal === null) throw new Error('it was sold and had an estimate');
    // By hand, all but the days: 30 of them at 10% a year on all the money.
    expect(walk.parts).toMatchObject({ retail: -90_000, recon: -11_000, fees: -1000, transport: 5000, other: -6000 });
    const { cashFactor } = holdFactorsFor(SETUP.carrying, () => 1, 30, 'cash');
    expect(walk.parts.days).toBe(deal.hold - Math.round((deal.cash * cashFactor) / FACTOR_UNIT));
    expect(WALK_PARTS.reduce((sum, part) => sum + walk.parts[part], walk.expected as number)).toBe(walk.actual);
    const held = deal.hold - walk.parts.days;
    expect(walk.actual).toBe(1_710_000 - 1_240_000 - 43_400 - 30_000 - 71_000 - 6000 - deal.standing - held);
    expect(walk.unbilled).toEqual([]);
  });

  test('lets what was expected stand for a bill that has not come, and says so', async () => {
    const lot = await won(1_240_000);
    await sell(lot, 1_800_000);
    const walk = profitWalk(await first());
    expect(walk?.parts).toMatchObject({ recon: 0, fees: 0, transport: 0 });
    expect(walk?.unbilled).toEqual(['fees', 'transport', 'recon']);
  });

  test('is not told of a car that stands, that was lost, or that had no estimate', async () => {
    await won(1_240_000);
    expect(profitWalk(await first())).toBeNull();
  });

  test('of a canceled sale is one part: what was paid and does not come back, less what was expected', async () => {
    const lot = await won(1_240_000);
    await book(lot, 'hammer', 'Car', 1_240_000);
    await book(lot, 'transport', 'Freight', 30_000);
    const opened = value(
      await there.store.append([
        {
          subject: subjectOfLot(lot),
          happening: {
            kind: 'dispute-opened',
            opened: { side: 'ours', reason: 'hidden-defect', words: 'It slips.', at: CLOSE, needs: [] },
          },
        },
      ]),
    );
    value(
      await there.store.append([
        {
          subject: subjectOfLot(lot),
          happening: {
            kind: 'dispute-closed',
            dispute: at(opened, 0).id,
            outcome: { ended: 'sale-undone', at: CLOSE },
          },
        },
      ]),
    );
    const one = await first();
    const walk = profitWalk(one);
    expect(one.happened.canceled).toBe(true);
    expect(walk?.actual).toBe(-30_000);
    expect(walk?.parts.canceled).toBe(-30_000 - (walk?.expected ?? 0));
    expect(missesOf([one], TODAY)).toMatchObject([{ kind: 'canceled', lost: 30_000 }]);
  });
});

describe('a lost lot', () => {
  test('within the max bid is an execution miss, and says whether a bid was in', async () => {
    await lost(1_000_000);
    const one = await first();
    expect(lostLot(one)).toMatchObject({ because: 'execution', needed: 1_005_000, bid: 'none' });
    expect(missesOf([one], TODAY)).toMatchObject([{ kind: 'lost', why: { because: 'execution' } }]);
  });

  test('above the max bid cost the rule what it would have earned, or was lost rightly', async () => {
    await lost(1_500_000);
    const rule = lostLot(await first());
    expect(rule).toMatchObject({ because: 'rule', needed: 1_505_000 });
    expect(rule?.profit).toBeGreaterThan(0);
    freshBrowser();
    there = await learnStore();
    await lost(1_790_000);
    expect(lostLot(await first())).toMatchObject({ because: 'rightly' });
  });

  test('above what the plan left for it was rationed', async () => {
    await lost(1_000_000);
    const one = await first();
    const planned = { ...one, forecast: { ...one.forecast, plan: { bid: cents(950_000) } } };
    expect(lostLot(planned)?.because).toBe('rationing');
    expect(lostLot({ ...one, forecast: { ...one.forecast, plan: { bid: null } } })?.because).toBe('rationing');
  });

  test('is not judged where its price is unknown, or it was written down only after the sale', async () => {
    await ended(there, { ended: 'lost' });
    expect(lostLot(await first())).toBeNull();
    const one = await first();
    expect(lostLot({ ...one, forecast: { ...one.forecast, late: true } })).toBeNull();
  });
});
