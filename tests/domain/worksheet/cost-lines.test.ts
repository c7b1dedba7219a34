import { describe, expect, test } from 'vitest';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { type ReconLine, reconLineSchema } from '../../../src/domain/money/estimate.ts';
import { standingCostsSchema } from '../../../src/domain/setup/money-rules.ts';
import { transportRuleSchema } from '../../../src/domain/setup/venue.ts';
import { costLines, expectedRecon } from '../../../src/domain/worksheet/cost-lines.ts';

const recon = (likely: number, rest: object = {}, chance = 1_000_000): ReconLine =>
  reconLineSchema.parse({ label: 'Tires', amount: { likely, ...rest }, chance });
const flat = transportRuleSchema.parse({ kind: 'flat', cents: 40_000 });
const linesOf = (facts: object, standing: object = {}, transport = flat) =>
  costLines(lotFactsSchema.parse(facts), { costs: standingCostsSchema.parse(standing) }, transport);

describe('a recon line costs on average', () => {
  test('the mean of a PERT distribution where it has a range (computed independently)', () => {
    expect(expectedRecon(recon(40_000, { low: 20_000, high: 150_000 }))).toBe(55_000);
  });

  test('its likely figure where it has none', () => {
    expect(expectedRecon(recon(40_000))).toBe(40_000);
  });

  test('with one end only, as if the other were the likely figure', () => {
    expect(expectedRecon(recon(40_000, { high: 100_000 }))).toBe(50_000);
    expect(expectedRecon(recon(40_000, { low: 10_000 }))).toBe(35_000);
  });

  test('its share of the chance that it is needed, rounded once', () => {
    expect(expectedRecon(recon(120_000, { low: 30_000, high: 250_000 }, 150_000))).toBe(19_000);
    expect(expectedRecon(recon(1, {}, 500_000))).toBe(1);
    expect(expectedRecon(recon(1, { low: 0 }, 500_000))).toBe(0);
  });
});

describe('the costs of a lot', () => {
  test('are its own recon lines in place of the standing amount', () => {
    const lines = linesOf(
      { recon: [recon(40_000, { low: 20_000, high: 150_000 }), recon(90_000, { high: 200_000 }, 200_000)] },
      { reconCents: 60_000 },
    ).filter((line) => line.kind === 'recon');
    expect(lines).toEqual([
      { kind: 'recon', label: 'Recon: Tires', cents: 55_000, range: { low: 20_000, high: 150_000 } },
      {
        kind: 'recon',
        label: 'Recon: Tires (20% likely to be needed)',
        cents: 21_667,
        range: { low: 0, high: 200_000 },
      },
    ]);
  });

  test('are the standing amount when it has no recon lines, or an empty list of them', () => {
    const standing = [{ kind: 'recon', label: 'Recon, your standard amount', cents: 60_000 }];
    expect(linesOf({}, { reconCents: 60_000 })).toEqual(expect.arrayContaining(standing));
    expect(linesOf({ recon: [] }, { reconCents: 60_000 })).toEqual(expect.arrayContaining(standing));
  });

  test('include pack, overhead and selling where there are any', () => {
    const kinds = (standing: object) => linesOf({}, standing).map((line) => `${line.kind} ${line.cents}`);
    expect(kinds({ packCents: 1, overheadCents: 2, sellingCents: 3 })).toEqual([
      'recon 0',
      'transport 40000',
      'pack 1',
      'overhead 2',
      'selling 3',
    ]);
    expect(kinds({})).toEqual(['recon 0', 'transport 40000']);
  });

  test.each([
    [{ transport: 12_300 }, flat, 'Transport, as quoted', 12_300],
    [{ transport: 0 }, flat, 'Transport, as quoted', 0],
    [{}, flat, 'Transport, the venue’s flat rate', 40_000],
    [
      {},
      transportRuleSchema.parse({ kind: 'per-mile', miles: 1412, centsPerMile: 85, minimumCents: 25_000 }),
      'Transport, 1,412 miles at $0.85',
      120_020,
    ],
    [
      {},
      transportRuleSchema.parse({ kind: 'per-mile', miles: 12, centsPerMile: 85, minimumCents: 25_000 }),
      'Transport, minimum charge',
      25_000,
    ],
  ])('take a quote before the venue’s rule: %j %j', (facts, rule, label, cents) => {
    expect(linesOf(facts, {}, rule)[1]).toEqual({ kind: 'transport', label, cents });
  });
});
