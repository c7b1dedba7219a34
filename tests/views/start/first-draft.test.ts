import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { type FirstDraft, firstResult } from '../../../src/views/start/first-draft.ts';

const BOISE = zone('America/Boise');
const SETUP = startingSetup(BOISE);
const IDS = { venue: 'yard', fees: 'yard-fees' };
const WHOLE = {
  zone: BOISE,
  venueName: 'Saltgrass, west yard',
  venueZone: zone('America/Phoenix'),
  bands: [{ fromCents: cents(0), flatCents: cents(25_000), ratePpm: ppm(0) }],
  step: cents(10_000),
  transport: cents(78_000),
  profit: cents(150_000),
  lossChance: ppm(1_000_000),
  car: '2021 Larkspur Hauler',
  titleId: 'clean',
  retail: cents(2_000_000),
  recon: cents(90_000),
} satisfies FirstDraft;

test('while anything is blank there is no figure, and what is blank is named', () => {
  for (const field of ['venueName', 'bands', 'transport', 'car', 'retail', 'recon'] as const) {
    const { maxBid, missing, setup } = firstResult({ ...WHOLE, [field]: undefined }, SETUP, IDS);
    expect(maxBid, field).toBeUndefined();
    expect(missing, field).toHaveLength(1);
    // What was answered can be saved all the same.
    expect(setupSectionsSchema.safeParse({ ...SETUP, ...setup }).success, field).toBe(true);
  }
  expect(
    firstResult(
      {
        zone: BOISE,
        venueZone: BOISE,
        step: WHOLE.step,
        profit: WHOLE.profit,
        lossChance: WHOLE.lossChance,
        titleId: 'clean',
      },
      SETUP,
      IDS,
    ).facts,
  ).toBeUndefined();
});

test('a brand that nobody has confirmed has no figure either', () => {
  const { maxBid, missing } = firstResult({ ...WHOLE, titleId: 'flood' }, SETUP, IDS);
  expect(maxBid).toBeUndefined();
  expect(missing).toEqual([expect.stringContaining('title')]);
});

test('the figure of the page is the one of the worksheet after it was saved', () => {
  const { maxBid, setup, facts } = firstResult(WHOLE, SETUP, IDS);
  const sheet = worksheetOf(facts ?? {}, pricingContext({ ...SETUP, ...setup }));
  expect(sheet.ok && sheet.value.result.maxBid).toBe(maxBid);
  // By hand, holding left out: 20,000 less 900 recon, 780 transport, 250 fee and 1,500 profit is 16,570.
  const noHold = { ...SETUP, carrying: { ...SETUP.carrying, cashAnnualRatePpm: ppm(0) } };
  expect(firstResult(WHOLE, noHold, IDS).maxBid).toBe(1_650_000);
});

test('an answer of $0 is an answer', () => {
  const free = {
    ...WHOLE,
    transport: cents(0),
    recon: cents(0),
    bands: [{ fromCents: cents(0), flatCents: cents(0), ratePpm: ppm(0) }],
  };
  const noHold = { ...SETUP, carrying: { ...SETUP.carrying, cashAnnualRatePpm: ppm(0) } };
  expect(firstResult(free, noHold, IDS).maxBid).toBe(1_850_000);
});
