import { describe, expect, test } from 'vitest';
import { claimedMiles } from '../../../src/domain/claims/claimed-miles.ts';
import { contradictionsOf, type Sighting } from '../../../src/domain/claims/contradictions.ts';
import { claimSchema } from '../../../src/domain/lot/claim.ts';
import { instant } from '../../../src/domain/time/instant.ts';

const SPRING = instant(Date.UTC(2026, 2, 3));
const NOW = instant(Date.UTC(2026, 10, 27));
const listing = (facts: Sighting['facts']): Sighting => ({ source: 'this listing', at: NOW, facts });
const earlier = (facts: Sighting['facts']): Sighting => ({ source: 'its sale of 3 March', at: SPRING, facts });
const kinds = (one: Sighting, ...others: Sighting[]) => contradictionsOf(one, others, 2026).map(({ kind }) => kind);

describe('a listing', () => {
  test('that states another model year than its VIN is contradicted (49 CFR 565.15, sample VIN)', () => {
    const [found] = contradictionsOf(listing({ vin: '1G4AH59H45G118341', year: 2007 }), [], 2026);
    expect(found?.kind).toBe('vin-year');
    expect(found?.message).toContain('2005');
    expect(kinds(listing({ vin: '1G4AH59H45G118341', year: 2005 }))).toEqual([]);
    expect(kinds(listing({ vin: 'too short', year: 2007 }))).toEqual([]);
  });

  test('that shows fewer miles than an earlier sale of the car is contradicted, whichever is asked about', () => {
    const [found] = contradictionsOf(listing({ miles: 61_000 }), [earlier({ miles: 74_210 })], 2026);
    expect(found?.kind).toBe('miles-fell');
    expect(found?.message).toBe(
      'This listing says 61,000 miles, 13,210 miles fewer than its sale of 3 March said earlier (74,210 miles). Treat the mileage as not actual until it is explained.',
    );
    expect(kinds(earlier({ miles: 74_210 }), listing({ miles: 61_000 }))).toEqual(['miles-fell']);
  });

  test('may show more miles than an earlier sale, and a round figure for the same ones', () => {
    expect(kinds(listing({ miles: 74_900 }), earlier({ miles: 74_210 }))).toEqual([]);
    expect(kinds(listing({ miles: 74_000 }), earlier({ miles: 74_210 }))).toEqual([]);
    expect(kinds(listing({ miles: 74_100 }), earlier({ miles: 74_210 }))).toEqual(['miles-fell']);
  });

  test('that names two mileages at once is contradicted, but for a rounded one', () => {
    const report = (miles: number): Sighting => ({ source: 'the condition report', facts: { miles } });
    expect(kinds(listing({ miles: 41_237 }), report(47_237))).toEqual(['miles']);
    expect(kinds(listing({ miles: 41_237 }), report(41_000))).toEqual([]);
  });

  test('that names another year, trim, title or VIN than an earlier life is contradicted; spelling does not matter', () => {
    expect(
      kinds(
        listing({ year: 2020, trim: 'Work-Line', make: 'Harlan', model: 'V 24', titleId: 'Clean', vin: 'A' }),
        earlier({ year: 2019, trim: 'work line', make: 'HARLAN', model: 'V24', titleId: 'Flood', vin: 'B' }),
      ),
    ).toEqual(['vin', 'year', 'title']);
    expect(kinds(listing({ year: 2020 }), earlier({}))).toEqual([]);
  });
});

describe('a statement about mileage', () => {
  const said = (statement: string, over: object = {}) =>
    claimedMiles([claimSchema.parse({ about: 'mileage', statement, worthIfFalse: 100_00, ...over })]).map(
      ({ facts }) => facts.miles,
    );

  test.each([
    ['Only 41,200 miles', [41_200]],
    ['41200 mi, one owner', [41_200]],
    ['41.2k miles from new', [41_200]],
    ['low miles', []],
    ['40,000 miles or 50,000 miles', []],
    ['actual mileage', []],
  ])('“%s” is read as %j', (statement, miles) => {
    expect(said(statement)).toEqual(miles);
  });

  test('that was refuted, or is about something else, says nothing', () => {
    expect(said('41,200 miles', { evidence: 'refuted' })).toEqual([]);
    expect(said('tyres have 5,000 miles', { about: 'other' })).toEqual([]);
  });
});
