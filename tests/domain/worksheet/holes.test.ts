import { describe, expect, test } from 'vitest';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { withTitleFigure, withTransport, withVenueFees } from '../../../src/domain/setup/fill-hole.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';

const venue = (over: object = {}): Venue =>
  setupSectionsSchema.parse({
    ...startingSetup(zone('America/Boise')),
    venues: [
      {
        id: 'yard',
        name: 'Saltgrass, west yard',
        zone: 'America/Phoenix',
        feeScheduleIds: [],
        increments: [{ fromCents: 0, stepCents: 10_000 }],
        transport: { kind: 'flat', cents: 0 },
        ...over,
      },
    ],
  }).venues[0] as Venue;
/** A setup as somebody has it who has just entered the name of a venue. */
const begun = (over: object = {}): Setup => ({ ...startingSetup(zone('America/Boise')), venues: [venue(over)] });
const FEES = [{ fromCents: cents(0), flatCents: cents(25_000), ratePpm: ppm(0) }];

const asked = (setup: Setup, over: object = {}) => {
  const facts = lotFactsSchema.parse({ venueId: 'yard', retail: { likely: 2_000_000 }, ...over });
  const sheet = worksheetOf(facts, pricingContext(setup));
  return sheet.ok ? sheet.value.result.maxBid : sheet.problems.map(({ reason }) => reason);
};

describe('what nobody has said gives no max bid', () => {
  test('neither buy fees nor transport are taken as nothing', () => {
    expect(asked(begun())).toEqual(['no-fees', 'no-transport']);
  });

  test('nor is a schedule that was begun and never filled in', () => {
    const blank = { id: 'f', name: 'Fees', editions: [{ tables: [], charges: [] }] };
    const setup = { ...begun({ feeScheduleIds: ['f'], noTransport: true }), feeSchedules: [blank] };
    expect(asked(setup)).toEqual(['no-fees']);
    const filled = { ...setup, ...withVenueFees(setup, 'yard', FEES, 'fresh') };
    expect(filled.feeSchedules.map(({ id, name }) => [id, name])).toEqual([['f', 'Fees']]);
    expect(asked(filled)).toBeGreaterThan(0);
  });

  test('a brand counts by a percentage that the dealer confirmed, never by the one to start from', () => {
    const setup = begun({ noTransport: true, noBuyFees: true });
    expect(asked(setup, { titleId: 'flood' })).toEqual(['unconfirmed-title']);
    const clean = asked(setup, { titleId: 'clean' });
    const flood = asked({ ...setup, ...withTitleFigure(setup, 'flood', ppm(550_000)) }, { titleId: 'flood' });
    expect(flood).toBeLessThan(Number(clean) - 800_000);
  });

  test('nor by the starting figure as earlier setups stored it, with the words in the caution', () => {
    const caution = 'Look at the wiring. 80% is only a starting figure. Enter what such cars bring you.';
    const old = { id: 'flood', name: 'Flood', keepsPpm: ppm(800_000), floorable: false, caution };
    const setup = { ...begun({ noTransport: true, noBuyFees: true }), titles: [old] };
    expect(asked(setup, { titleId: 'flood' })).toEqual(['unconfirmed-title']);
    const confirmed = { ...setup, ...withTitleFigure(setup, 'flood', ppm(800_000)) };
    expect(confirmed.titles[0]?.caution).toBe('Look at the wiring.');
    expect(asked(confirmed, { titleId: 'flood' })).toBeGreaterThan(0);
    // Somebody who put in his own figure had no reason to clear the words.
    expect(asked({ ...setup, titles: [{ ...old, keepsPpm: ppm(700_000) }] }, { titleId: 'flood' })).toBeGreaterThan(0);
  });
});

describe('each answer fills one hole', () => {
  test('fees are tied to the venue at once, and cost what was entered', () => {
    const setup = begun({ noTransport: true });
    const free = asked({ ...setup, ...withVenueFees(setup, 'yard', [], 'fresh') });
    const charged = { ...setup, ...withVenueFees(setup, 'yard', FEES, 'fresh') };
    expect(charged.venues[0]?.feeScheduleIds).toEqual(['fresh']);
    expect(setupSectionsSchema.safeParse(charged).success).toBe(true);
    expect(asked(charged)).toBeLessThanOrEqual(Number(free) - 20_000);
  });

  test('a venue that was said to charge nothing charges again once fees are entered', () => {
    const free = begun({ noTransport: true, noBuyFees: true });
    const { venues } = withVenueFees(free, 'yard', FEES, 'fresh');
    expect(venues[0]).not.toHaveProperty('noBuyFees');
  });

  test('transport is what was entered, and $0 says that delivery is free', () => {
    const [yard] = begun({ noBuyFees: true }).venues;
    if (yard === undefined) throw new Error('there is a venue');
    const setup = (of: Venue) => ({ ...begun(), venues: [of] });
    const free = withTransport(yard, cents(0));
    expect(free.noTransport).toBe(true);
    expect(Number(asked(setup(free)))).toBeGreaterThan(Number(asked(setup(withTransport(free, cents(40_000))))));
    expect(withTransport(free, cents(40_000))).not.toHaveProperty('noTransport');
  });

  test('a quote for the car itself answers for it, also one of $0', () => {
    expect(asked(begun({ noBuyFees: true }), { transport: 0 })).toBeGreaterThan(0);
    expect(asked(begun({ noBuyFees: true }), { transport: 30_000 })).toBeGreaterThan(0);
  });
});
