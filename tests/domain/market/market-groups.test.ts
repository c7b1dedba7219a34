import { describe, expect, test } from 'vitest';
import type { Closing } from '../../../src/domain/market/closing.ts';
import { carClassOf, sellerKind } from '../../../src/domain/market/kinds-of-lot.ts';
import { marketOf } from '../../../src/domain/market/market.ts';
import { type GroupFacts, marketGroups } from '../../../src/domain/market/market-groups.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';

const VAN: GroupFacts = {
  titleId: 'clean',
  venueId: 'saguaro',
  make: 'Alderman',
  model: 'Cargo 250',
  seller: 'A bank',
};
const TRUCK: GroupFacts = { ...VAN, make: 'Larkspur', model: 'Hauler' };
const many = (count: number, facts: GroupFacts, weight = 1) => Array.from({ length: count }, () => ({ facts, weight }));

describe('lots count as alike', () => {
  test.each([
    ['A rental fleet', 'rental'],
    ['A utility’s fleet', 'fleet'],
    ['First Plains Credit Union', 'lender'],
    ['City of Fallow Creek', 'government'],
    ['Off-lease returns', 'lease'],
    ['Tamarack Motors', 'dealer'],
    ['Somebody', ''],
    [undefined, ''],
  ])('by the kind of seller that %s says', (seller, kind) => {
    expect(sellerKind(seller)).toBe(kind);
  });

  test('by their line, whatever the size: a 250 and a 350 are one', () => {
    expect(carClassOf({ make: 'ALDERMAN', model: 'Cargo 350' })).toBe(carClassOf(VAN));
    expect(carClassOf({ make: 'Alderman' })).toBe('');
  });

  test('a line of cars or a kind of seller is a group of its own only where it leaves the others enough closings', () => {
    const groupOf = marketGroups([...many(25, VAN), ...many(20, TRUCK), ...many(19, { ...TRUCK, venueId: 'fogline' })]);
    expect(groupOf(VAN)).toEqual({ title: 'clean', venue: 'saguaro', carClass: 'alderman cargo', seller: '' });
    // Both of them apart would leave nothing to whatever else is sold there.
    expect(groupOf(TRUCK).carClass).toBe('');
    expect(groupOf({ ...TRUCK, make: 'Quillon' })).toEqual(groupOf(TRUCK));
    expect(groupOf({ ...VAN, venueId: 'fogline' })).toMatchObject({ venue: '', carClass: '' });
  });

  test('a kind of seller is told apart within a line of cars', () => {
    const rental = { ...VAN, seller: 'A rental fleet' };
    const groupOf = marketGroups([...many(30, VAN), ...many(22, rental), ...many(21, TRUCK)]);
    expect(groupOf(VAN)).toMatchObject({ carClass: 'alderman cargo', seller: 'lender' });
    expect(groupOf(rental)).toMatchObject({ carClass: 'alderman cargo', seller: '' });
  });

  test('old closings are no reason to cut: they count for as little as they teach', () => {
    const groupOf = marketGroups([...many(30, VAN, 0.5), ...many(30, TRUCK)]);
    expect(groupOf(VAN).carClass).toBe('');
  });

  test('bids that are handed in unseen are never taken for alike with others', () => {
    const sealed: GroupFacts = { ...VAN, sealed: {} };
    const groupOf = marketGroups([...many(25, VAN), ...many(5, sealed)]);
    expect(groupOf(sealed)).toEqual({ title: 'clean', venue: 'sealed', carClass: '', seller: '' });
    expect(groupOf(VAN).venue).toBe('saguaro');
  });
});

test('vans that go 15% higher than trucks at the same venue have another chance, and each starts from the other', () => {
  const facts = [...many(30, VAN), ...many(30, TRUCK)];
  const groupOf = marketGroups(facts);
  const ended = facts.map(
    ({ facts: one }, i): Closing => ({
      group: groupOf(one),
      at: instant(0),
      zeroProfit: cents(1_000_000),
      step: cents(2_500),
      ending: { was: 'lost', price: cents(Math.round((one === VAN ? 1_000_000 : 870_000) * (0.95 + 0.01 * (i % 11)))) },
    }),
  );
  const market = marketOf(ended, instant(1));
  const below = (one: GroupFacts) => market.curveOf(groupOf(one)).below(Math.log(0.95));
  expect(below(TRUCK)).toBeGreaterThan(below(VAN) + 0.3);
});
