import { describe, expect, test } from 'vitest';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import { pricingContext } from '../../src/domain/bid/pricing-context.ts';
import { worksheetOf } from '../../src/domain/bid/worksheet-of.ts';
import { type LotId, lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { setupSectionsSchema } from '../../src/domain/setup/setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { checkDigitMatches } from '../../src/domain/vin/check-digit.ts';
import { vinSchema } from '../../src/domain/vin/vin.ts';

const at = (text: string) => demoScenario(instant(Date.parse(text)), () => '' as LotId);
const MOMENTS = [
  '2026-11-23T12:00Z',
  '2026-11-24T03:00Z',
  '2026-11-25T17:00Z',
  '2026-11-26T19:00Z',
  '2026-11-27T23:30Z',
  '2026-11-28T16:59Z',
  '2026-11-28T20:00Z',
  '2026-11-29T18:00Z',
  // The weeks in which the clocks change.
  '2026-10-28T15:00Z',
  '2027-03-11T15:00Z',
  '2026-07-04T22:00Z',
];

describe.each(MOMENTS)('the invented week at %s', (moment) => {
  const { setup, lots } = at(moment);

  test('passes the schemas', () => {
    expect(setupSectionsSchema.safeParse(setup).success).toBe(true);
    for (const { facts } of lots) expect(lotFactsSchema.safeParse(facts).error?.issues).toBeUndefined();
  });

  test('has right VINs but for two, which are there to be doubted', () => {
    const wrong = lots.filter(({ facts }) => !checkDigitMatches(vinSchema.parse(facts.vin)));
    expect(wrong).toHaveLength(2);
    expect(new Set(lots.map(({ facts }) => facts.vin)).size).toBe(lots.length);
  });

  test('has lots of every kind: priced, unfinished, past their price, placed, doubtful, closed and soon to close', () => {
    const context = pricingContext(setup);
    const now = Date.parse(moment);
    const sheets = lots.map(({ facts }) => ({ facts, sheet: worksheetOf(facts, context) }));
    const count = (is: (one: (typeof sheets)[number]) => boolean) => sheets.filter(is).length;
    expect(count(({ sheet }) => sheet.ok && sheet.value.result.maxBid !== null)).toBeGreaterThan(25);
    expect(count(({ sheet }) => !sheet.ok)).toBeGreaterThan(1);
    expect(count(({ sheet }) => sheet.ok && (sheet.value.headroom ?? 0) < 0)).toBeGreaterThan(0);
    expect(count(({ facts }) => facts.proxy !== undefined)).toBeGreaterThan(3);
    expect(count(({ facts }) => facts.close?.doubts.includes('abbreviation') ?? false)).toBe(1);
    expect(count(({ facts }) => (facts.close?.instant ?? now) < now)).toBeGreaterThanOrEqual(2);
    expect(
      count(
        ({ facts }) => facts.close !== undefined && facts.close.instant > now && facts.close.instant < now + 900_000,
      ),
    ).toBeGreaterThan(0);
  });

  test('has closings on the coming Saturday too near together to watch one by one', () => {
    const closes = lots.flatMap(({ facts }) => facts.close?.instant ?? []).sort((a, b) => a - b);
    const near = closes.filter((close, i) => i > 0 && close - (closes[i - 1] ?? 0) <= 180_000);
    expect(near.length).toBeGreaterThanOrEqual(3);
  });
});

test('the same moment gives the same week', () => {
  expect(at('2026-11-25T17:00Z')).toEqual(at('2026-11-25T17:00Z'));
});
