import { describe, expect, test } from 'vitest';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { changesTo } from '../../src/folds/fact-changes.ts';
import { isSamePage, isSameSale } from '../../src/folds/same-sale.ts';

const NOW = Date.UTC(2026, 10, 27, 15);
const closing = (hours: number, how: 'countdown' | 'stated-zone' = 'stated-zone', seconds = 0): LotFacts => ({
  close: {
    instant: instant(NOW + hours * HOUR + seconds * 1000),
    text: 'as stated',
    zone: zone('America/Boise'),
    how,
    doubts: [],
    otherwise: [],
  },
});
const at = (pageUrl: string, more: LotFacts = {}): LotFacts => ({ pageUrl, ...more });
const LOT = 'https://sales.saltgrass.example/lot/1184';

describe('the same sale', () => {
  test('is told by its venue and its name, where both tellings name them', () => {
    expect(isSameSale({ venueId: 'a' }, { venueId: 'b' }, NOW)).toBe(false);
    expect(isSameSale({ venueName: 'Salt Grass' }, { venueName: 'SALT-GRASS' }, NOW)).toBe(true);
    expect(isSameSale({ sale: 'Saturday' }, { sale: 'Sunday' }, NOW)).toBe(false);
    expect(isSameSale({ venueId: 'a' }, {}, NOW)).toBe(true);
  });

  test('is over once its close has passed and the car is offered for a later one', () => {
    expect(isSameSale(closing(-1), closing(23), NOW)).toBe(false);
    // Put off while it ran: the very same lot.
    expect(isSameSale(closing(1), closing(30), NOW)).toBe(true);
    // Told again after it closed, a few minutes apart: still the one that closed.
    expect(isSameSale(closing(-1), closing(-1, 'stated-zone', 300), NOW)).toBe(true);
  });

  test('is another on another site, and on another page under another lot number', () => {
    expect(isSameSale(at(LOT), at('https://bids.alderfork.example/1'), NOW)).toBe(false);
    expect(isSameSale(at(LOT, { venueId: 'a' }), at('https://bids.alderfork.example/1', { venueId: 'a' }), NOW)).toBe(
      true,
    );
    const other = at('https://sales.saltgrass.example/lot/2', { lotNumber: '2' });
    expect(isSameSale(at(LOT, { lotNumber: '1184' }), other, NOW)).toBe(false);
    expect(isSameSale(at(LOT, { lotNumber: '2' }), other, NOW)).toBe(true);
  });

  test('is not brought back by a page that names no close, unless it is the very page', () => {
    const closed = at(LOT, closing(-5));
    expect(isSameSale(closed, at(LOT), NOW)).toBe(true);
    expect(isSameSale(closed, at('https://sales.saltgrass.example/lot/2'), NOW)).toBe(false);
    // A file has no page and says nothing against it.
    expect(isSameSale(closed, {}, NOW)).toBe(true);
  });

  test('knows a page again however one came to it', () => {
    expect(isSamePage(LOT, `${LOT}?utm_source=mail&ref=x#photos`)).toBe(true);
    expect(isSamePage(`${LOT}?unit=1`, `${LOT}?unit=2`)).toBe(false);
    expect(isSamePage('https://app.example/#/lot/1', 'https://app.example/#/lot/2')).toBe(false);
    expect(isSamePage(undefined, LOT)).toBe(false);
  });
});

describe('what is told otherwise', () => {
  const taken = (known: LotFacts, next: LotFacts) =>
    changesTo(known, next).map(({ field, taken: is }) => `${field} ${is ? 'taken' : 'left'}`);

  test('is taken where the sale decides it, and left where the buyer may know better', () => {
    expect(taken({ miles: 10, make: 'A' }, { miles: 20, make: 'B', lotNumber: '7' })).toEqual([
      'miles left',
      'make left',
      'lotNumber taken',
    ]);
  });

  test('never lowers a bid by itself', () => {
    expect(taken({ priceNow: cents(900_00) }, { priceNow: cents(1000_00) })).toEqual(['priceNow taken']);
    expect(taken({ priceNow: cents(1000_00) }, { priceNow: cents(900_00) })).toEqual(['priceNow left']);
  });

  test('is no news when a countdown is looked at a minute later, but is when a stated close moves by a second', () => {
    expect(taken(closing(5, 'countdown'), closing(5, 'countdown', 60))).toEqual([]);
    expect(taken(closing(5), closing(5, 'stated-zone', 1))).toEqual(['close taken']);
    expect(taken(closing(5, 'countdown'), closing(6, 'countdown'))).toEqual(['close taken']);
  });
});
