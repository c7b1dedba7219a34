import { beforeEach, describe, expect, test } from 'vitest';
import { carryingSchema } from '../../../src/domain/carrying/carrying-rules.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Store } from '../../../src/store/store.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { beliefsAtClose } from '../../../src/views/learn/beliefs-at-close.ts';
import { contextsThen, pastLots } from '../../../src/views/learn/past-lots.ts';
import { FEES, phoenix, SALTGRASS } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { freshBrowser, openTestStore, testClock, value } from '../../store/open-test-store.ts';

const BOISE = zone('America/Boise');
const SETUP = {
  ...startingSetup(BOISE),
  venues: [{ ...SALTGRASS, transport: { kind: 'flat' as const, cents: cents(35_000) } }],
  ...FEES,
  carrying: carryingSchema.parse({ cashAnnualRatePpm: ppm(100_000), daysToSell: { kind: 'median', days: 40 } }),
};
const CLOSE = phoenix('2026-11-24T10:00');
const DAY = '2027-01-10' as LocalDate;

let store: Store;
const clock = testClock(phoenix('2026-11-20T09:00'));
beforeEach(async () => {
  freshBrowser();
  clock.set(phoenix('2026-11-20T09:00'));
  store = await openTestStore({ now: clock.now });
  value(await store.saveSetup(SETUP));
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

/** Watched before its sale, and its end noted an hour after it. */
async function sold(result: { ended: 'won' | 'lost'; hammerCents: Cents }): Promise<LotId> {
  const facts = {
    make: 'Larkspur',
    model: 'Hauler',
    venueId: 'saltgrass',
    retail: { low: cents(1_600_000), likely: cents(1_800_000), high: cents(2_000_000) },
    recon: [{ label: 'Tires', amount: { likely: cents(60_000) }, chance: ppm(1_000_000) }],
  };
  const lot = at(value(await store.addLots('typed', [{ facts }])).lots, 0);
  clock.set(CLOSE + 3_600_000);
  value(await store.noteResult(lot, { result, at: CLOSE }));
  return lot;
}

async function past() {
  const lots = await store.allLots();
  const books = await store.books();
  const { folders } = foldersOf(lots, books, new Map(), SETUP, DAY);
  const beliefs = beliefsAtClose(await store.entriesOf(lots.map(({ id }) => id)));
  return pastLots(lots, beliefs, folders, contextsThen(BOISE), DAY);
}

describe('a past lot', () => {
  test('that was won holds the deal at the price paid as it was forecast, and its parts make its profit to the cent', async () => {
    await sold({ ended: 'won', hammerCents: cents(1_240_000) });
    const { forecast, happened } = at((await past()).past, 0);
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
    await sold({ ended: 'lost', hammerCents: cents(1_240_000) });
    const { forecast, happened } = at((await past()).past, 0);
    expect(forecast.deal?.price).toBe(1_245_000);
    expect(happened.bought).toBeNull();
  });

  test('knows what was billed, and nothing of what is not', async () => {
    const lot = await sold({ ended: 'won', hammerCents: cents(1_240_000) });
    const bill = (cost: 'hammer' | 'fee' | 'recon', label: string, amount: number) => ({
      lot,
      cost,
      label,
      cents: cents(amount),
    });
    value(
      await store.book(
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
    const { bought } = at((await past()).past, 0).happened;
    expect(bought).toMatchObject({ fees: 42_900, transport: null, recon: 71_000, allIn: null, days: 30, sold: true });
    expect(bought?.sale).toEqual({ cents: 1_710_000, date: '2026-12-24', buyer: 'retail' });
    expect(bought?.lines.find(({ label }) => label === 'Tires')).toMatchObject({
      actualCents: 71_000,
      expected: { cents: 60_000 },
    });
  });

  test('that can’t be worked out is named, and the others stand', async () => {
    await sold({ ended: 'won', hammerCents: cents(1_240_000) });
    const lots = await store.allLots();
    const torn = {
      ...at(lots, 0),
      get sale(): never {
        throw new RangeError('an amount came out as NaN cents');
      },
    };
    const beliefs = beliefsAtClose(await store.entriesOf(lots.map(({ id }) => id)));
    const { past: done, apart } = pastLots([torn, at(lots, 0)], beliefs, [], contextsThen(BOISE), DAY);
    expect(done).toHaveLength(1);
    expect(apart.map(({ why }) => why.short)).toEqual(['an amount came out as NaN cents']);
  });
});

test('a close that was put into the lot is not what decides: the end that was noted is', async () => {
  const facts = { venueId: 'saltgrass', close: closing(CLOSE - 1000), retail: { likely: cents(1_800_000) } };
  const lot = at(value(await store.addLots('typed', [{ facts }])).lots, 0);
  clock.set(CLOSE + 1000);
  value(await store.noteResult(lot, { result: { ended: 'not-sold' }, at: CLOSE }));
  expect(at((await past()).past, 0).forecast).toMatchObject({ at: CLOSE, late: false, deal: null });
});
