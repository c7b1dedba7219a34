import { beforeEach, describe, expect, test } from 'vitest';
import { moneyOf, SCORE_BY, scoresBy, scoresOf } from '../../../src/domain/learn/learn-report.ts';
import { FAIR_SCORE } from '../../../src/domain/learn/money/sale-week.ts';
import { LEAST_SALES } from '../../../src/domain/learn/scores/retail-score.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { freshBrowser, value } from '../../store/open-test-store.ts';
import { CLOSE, ended, learnStore, past, TODAY } from './learn-store.ts';

let there: Awaited<ReturnType<typeof learnStore>>;
beforeEach(async () => {
  freshBrowser();
  there = await learnStore();
});

/** Ten wins, nine of them sold, and three lots that others bought. */
async function aSeason() {
  for (let n = 0; n < 10; n++) {
    const lot = await ended(there, { ended: 'won', hammerCents: cents(1_100_000 + n * 10_000) });
    if (n === 9) continue;
    const line = { lot, cost: 'recon' as const, label: 'Tires', cents: cents(55_000 + n * 3000) };
    value(
      await there.store.book(
        { kind: 'costs-booked', date: '2026-12-01' as LocalDate, paid: 'bank', lines: [line] },
        {
          kind: 'outcome-booked',
          lot,
          date: `2026-12-1${n}` as LocalDate,
          priceCents: cents(1_700_000 + n * 20_000),
          buyer: n === 0 ? 'wholesale' : 'retail',
        },
      ),
    );
  }
  for (const hammer of [1_000_000, 1_500_000, 1_790_000])
    await ended(there, { ended: 'lost', hammerCents: cents(hammer) });
  return (await past(there.store)).past;
}

describe('what a season teaches', () => {
  test('leaves wholesale out of retail, counts cars that stand, and says what is missing', async () => {
    const season = await aSeason();
    const scores = scoresOf(season, { today: TODAY });
    expect(scores.retail).toMatchObject({ cases: 8, missing: 0 });
    expect(scores.days).toMatchObject({ cases: 8, score: { sold: 8, unsold: 2 } });
    expect(scores.chances).toMatchObject({ cases: 0, missing: 30, score: null });
    expect(scores.recon.map(({ label, cases }) => [label, cases])).toEqual([
      ['All recon of a car', 9],
      ['Tires', 9],
    ]);
    expect(scores.fees).toMatchObject({ cases: 0, score: null });
  });

  test('is the same in whatever order the lots come', async () => {
    const season = await aSeason();
    const looking = { today: TODAY };
    const mixed = [...season.slice(5), ...season.slice(0, 5)].reverse();
    expect(scoresOf(mixed, looking)).toEqual(scoresOf(season, looking));
    expect(moneyOf(mixed, TODAY)).toEqual(moneyOf(season, TODAY));
    for (const by of SCORE_BY) expect(scoresBy(mixed, by, looking)).toEqual(scoresBy(season, by, looking));
  });

  test('tells scores apart by venue, kind of car, estimator and quarter', async () => {
    const season = await aSeason();
    const keys = SCORE_BY.map((by) => scoresBy(season, by, { today: TODAY }).map(({ key }) => key));
    expect(keys).toEqual([['Saltgrass'], ['Larkspur Hauler'], ['buyer'], ['2026, quarter 4']]);
  });

  test('tells where the money of each sold car went, and what the week could have earned', async () => {
    const { cars, average, weeks } = moneyOf(await aSeason(), TODAY);
    expect(cars).toHaveLength(9);
    expect(average?.cars).toBe(9);
    expect(weeks).toHaveLength(1);
    expect(weeks[0]).toMatchObject({ week: '2026-11-23', won: 10, ofPurse: false });
    expect(weeks[0]?.score).toBeGreaterThan(0.5);
    expect(FAIR_SCORE).toEqual({ low: 0.86, high: 0.96 });
  });

  test('without a lot is nothing, and invents nothing', () => {
    const none = scoresOf([], { today: TODAY });
    expect(none.retail).toEqual({ cases: 0, least: LEAST_SALES, missing: LEAST_SALES, score: null });
    expect(none).toMatchObject({ recon: [], trend: null, days: { score: null }, fees: { score: null } });
    expect(moneyOf([], TODAY)).toEqual({ cars: [], average: null, weeks: [], misses: [] });
  });

  test('takes nothing from a lot that was written down only after its sale', async () => {
    there.clock.set(CLOSE + 7_200_000);
    const season = (await aSeason()).map((one) => ({ ...one, forecast: { ...one.forecast, late: true } }));
    expect(scoresOf(season, { today: TODAY })).toEqual(scoresOf([], { today: TODAY }));
    expect(moneyOf(season, TODAY)).toMatchObject({ cars: [], weeks: [], misses: [] });
  });
});
