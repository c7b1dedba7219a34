import { describe, expect, test } from 'vitest';
import { demoScenario } from '../../src/demo/demo-scenario.ts';
import { type LotId, lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { setupSectionsSchema } from '../../src/domain/setup/setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { checkDigitMatches } from '../../src/domain/vin/check-digit.ts';
import { vinSchema } from '../../src/domain/vin/vin.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../src/domain/worksheet/worksheet-of.ts';
import { happeningSchema } from '../../src/journal/happening.ts';

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

test('the next to close is the lot that has something of everything, whatever the time of the week', () => {
  // Two weekdays and the Saturday, at another quarter of every hour in the hours that the demo's own sales fall in.
  for (const day of [26, 27, 28]) {
    for (let quarter = 4 * 12 + (day % 4); quarter < 4 * 26; quarter += 4) {
      const now = Date.UTC(2026, 10, day, 0, 4 + 15 * quarter);
      const ahead = demoScenario(instant(now), () => '' as LotId).lots.flatMap(({ facts }) =>
        facts.close !== undefined && facts.close.instant > now ? [{ at: facts.close.instant, facts }] : [],
      );
      const { facts } = ahead.reduce((a, b) => (b.at < a.at ? b : a));
      expect({ now, comps: (facts.comps ?? []).length > 2, claims: (facts.claims ?? []).length > 0 }).toEqual({
        now,
        comps: true,
        claims: true,
      });
    }
  }
});

describe.each(MOMENTS)('the invented week at %s', (moment) => {
  const week = at(moment);
  const { setup, lots } = week;

  test('has weeks of sales behind it: won, lost past and within reach, corrected, and closings that wait', () => {
    const { past } = week;
    for (const { facts } of past.lots) {
      expect(lotFactsSchema.safeParse(facts).error?.issues).toBeUndefined();
      expect(facts.close?.instant).toBeLessThan(Date.parse(moment));
    }
    const happenings = past.sales.flatMap((sale) => sale.happenings);
    for (const happening of happenings) expect(happeningSchema.safeParse(happening).error?.issues).toBeUndefined();
    const ends = happenings.flatMap((one) => (one.kind === 'result-noted' ? one.result.ended : []));
    expect(ends).toEqual(expect.arrayContaining(['won', 'lost', 'not-sold', 'pending', 'withdrawn']));
    expect(past.lots.length - past.sales.length).toBe(3);
    const vins = new Set(past.lots.map(({ facts }) => facts.vin));
    expect(lots.filter(({ facts }) => vins.has(facts.vin))).toHaveLength(1);
  });

  test('passes the schemas', () => {
    expect(setupSectionsSchema.safeParse(setup).success).toBe(true);
    for (const { facts } of lots) expect(lotFactsSchema.safeParse(facts).error?.issues).toBeUndefined();
  });

  test('has right VINs but for two, which are there to be doubted', () => {
    const wrong = lots.filter(({ facts }) => !checkDigitMatches(vinSchema.parse(facts.vin)));
    expect(wrong).toHaveLength(2);
    // One car is there twice: it comes back with fewer miles than it had.
    expect(new Set(lots.map(({ facts }) => facts.vin)).size).toBe(lots.length - 1);
  });

  test('has lots of every kind: priced, unfinished, past their price, placed, doubtful, closed and soon to close', () => {
    const context = pricingContext(setup);
    const now = Date.parse(moment);
    const sheets = lots.map(({ facts }) => ({ facts, sheet: worksheetOf(facts, context) }));
    const count = (is: (one: (typeof sheets)[number]) => boolean) => sheets.filter(is).length;
    expect(count(({ sheet }) => sheet.ok && sheet.value.result.maxBid !== null)).toBeGreaterThan(25);
    expect(count(({ sheet }) => !sheet.ok)).toBeGreaterThan(1);
    // One whose fee falls at an edge: bids on both sides of a gap pay.
    expect(count(({ sheet }) => sheet.ok && sheet.value.result.accepted.length > 1)).toBeGreaterThan(0);
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

  test('has something to doubt, to compare and to be held down by, all at once at the top, and a sealed sale', () => {
    const [, , full] = lots;
    const { comps = [], claims = [], ceilings = [] } = full?.facts ?? {};
    expect([comps.length, claims.length, ceilings.length].every((count) => count > 0)).toBe(true);
    const context = pricingContext(setup);
    const sheets = lots.flatMap(({ facts }) => {
      const sheet = worksheetOf(facts, context);
      return sheet.ok ? [{ facts, ...sheet.value }] : [];
    });
    const top = sheets.find(({ facts }) => facts === full?.facts);
    expect(top?.appraisal.retail?.odd.length).toBe(1);
    expect(top?.appraisal.retail?.mean).toBeLessThan(top?.appraisal.retail?.uncapped ?? 0);
    expect(sheets.filter(({ result }) => result.limitedBy === 'sealed')).toHaveLength(1);
    expect(sheets.filter(({ result }) => result.limitedBy === 'loss-chance').length).toBeGreaterThan(0);
    const brandedAndDoubted = ({ facts }: (typeof sheets)[number]) =>
      facts.titleId === 'rebuilt' && facts.claims !== undefined;
    expect(sheets.filter(brandedAndDoubted).length).toBeGreaterThan(0);
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
