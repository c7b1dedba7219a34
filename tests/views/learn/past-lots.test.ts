import { beforeEach, describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { beliefsAtClose } from '../../../src/views/learn/beliefs-at-close.ts';
import { contextsThen, pastLots } from '../../../src/views/learn/past-lots.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, value } from '../../store/open-test-store.ts';
import { BOISE, CLOSE, ended, learnStore, past, TODAY } from './learn-store.ts';

let there: Awaited<ReturnType<typeof learnStore>>;
beforeEach(async () => {
  freshBrowser();
  there = await learnStore();
});

const closing = (moment: number) =>
  closeTimeSchema.parse({
    instant: moment,
    text: '10:00 AM',
    zone: 'America/Phoenix',
    how: 'venue-zone',
    doubts: [],
    otherwise: [],
  });

describe('a past lot', () => {
  test('that was won holds the deal at the price paid as it was forecast, and its parts make its profit to the cent', async () => {
    await ended(there, { ended: 'won', hammerCents: cents(1_240_000) });
    const { forecast, happened } = at((await past(there.store)).past, 0);
    const { deal } = forecast;
    if (deal === null) throw new Error('it has an estimate');
    expect(deal).toMatchObject({ price: 1_240_000, fees: 42_400, transport: 35_000, recon: 60_000, allIn: 1_317_400 });
    const { retail, doubts, fees, transport, recon, standing, hold, undone } = deal;
    expect(retail - doubts - deal.price - fees - transport - recon - standing - hold - undone).toBe(deal.profit);
    expect(forecast).toMatchObject({ late: false, retail: { basis: 'guess', mean: 1_800_000 } });
    expect(forecast.days.median).toBeCloseTo(40, 6);
    expect(happened).toMatchObject({
      ended: 'won',
      hammer: 1_240_000,
      canceled: false,
      bought: { sold: false, days: 47 },
    });
  });

  test('that was lost holds the deal at the next price above the winner’s', async () => {
    await ended(there, { ended: 'lost', hammerCents: cents(1_240_000) });
    const { forecast, happened } = at((await past(there.store)).past, 0);
    expect(forecast.deal?.price).toBe(1_245_000);
    expect(happened.bought).toBeNull();
  });

  test('knows what was billed, and nothing of what is not', async () => {
    const lot = await ended(there, { ended: 'won', hammerCents: cents(1_240_000) });
    const bill = (cost: 'hammer' | 'fee' | 'recon', label: string, amount: number) => ({
      lot,
      cost,
      label,
      cents: cents(amount),
    });
    value(
      await there.store.book(
        {
          kind: 'costs-booked',
          date: '2026-11-25' as LocalDate,
          paid: 'owed',
          lines: [bill('hammer', 'Car', 1_240_000), bill('fee', 'Buy fee', 42_900)],
        },
        {
          kind: 'costs-booked',
          date: '2026-12-01' as LocalDate,
          paid: 'bank',
          lines: [bill('recon', 'Tires', 71_000)],
        },
        { kind: 'outcome-booked', lot, date: '2026-12-24' as LocalDate, priceCents: cents(1_710_000), buyer: 'retail' },
      ),
    );
    const { bought } = at((await past(there.store)).past, 0).happened;
    expect(bought).toMatchObject({ fees: 42_900, transport: null, recon: 71_000, allIn: null, days: 30, sold: true });
    expect(bought?.sale).toEqual({ cents: 1_710_000, date: '2026-12-24', buyer: 'retail' });
    expect(bought?.lines.find(({ label }) => label === 'Tires')).toMatchObject({
      actualCents: 71_000,
      expected: { cents: 60_000 },
    });
  });

  test('that can’t be worked out is named, and the others stand', async () => {
    await ended(there, { ended: 'won', hammerCents: cents(1_240_000) });
    const lots = await there.store.allLots();
    const torn = {
      ...at(lots, 0),
      get sale(): never {
        throw new RangeError('an amount came out as NaN cents');
      },
    };
    const beliefs = beliefsAtClose(await there.store.entriesOf(lots.map(({ id }) => id)));
    const { past: done, apart } = pastLots([torn, at(lots, 0)], beliefs, [], contextsThen(BOISE), TODAY);
    expect(done).toHaveLength(1);
    expect(apart.map(({ why }) => why.short)).toEqual(['an amount came out as NaN cents']);
  });
});

test('a close that was put into the lot is not what decides: the end that was noted is', async () => {
  const facts = { venueId: 'saltgrass', close: closing(CLOSE - 1000), retail: { likely: cents(1_800_000) } };
  const lot = at(value(await there.store.addLots('typed', [{ facts }])).lots, 0);
  there.clock.set(CLOSE + 1000);
  value(await there.store.noteResult(lot, { result: { ended: 'not-sold' }, at: CLOSE }));
  expect(at((await past(there.store)).past, 0).forecast).toMatchObject({ at: CLOSE, late: false, deal: null });
});
