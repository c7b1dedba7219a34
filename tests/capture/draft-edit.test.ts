import { expect, test } from 'vitest';
import { editedFacts, unedited, withPicked, withTyped } from '../../src/capture/draft/draft-edit.ts';
import type { DraftLot } from '../../src/capture/draft/draft-lot.ts';
import { cents } from '../../src/domain/money/cents.ts';

const KNOWN = {
  venues: [{ id: 'salt', name: 'Saltgrass' }],
  titles: [
    { id: 'clean', name: 'Clean' },
    { id: 'rebuilt', name: 'Rebuilt' },
  ],
};
const reading = <Value>(value: Value, text: string) => ({
  value,
  from: 'page-text' as const,
  text,
  sure: 'certain' as const,
});
const DRAFT: DraftLot = {
  key: 'k',
  heading: 'h',
  tied: [],
  pageUrl: 'https://sales.saltgrass.example/lot/1',
  fields: {
    miles: { settled: true, readings: [reading(45_210, 'Odometer: 45,210')] },
    priceNow: {
      settled: false,
      readings: [reading(cents(9000_00), 'Current bid: $9,000'), reading(cents(9500_00), 'High bid: $9,500')],
    },
    title: { settled: true, readings: [reading('Branded, ask the office', 'Title: Branded, ask the office')] },
  },
};

test('what the page leaves open is no fact until the user has picked, and then keeps the page’s own words', () => {
  expect(editedFacts(unedited(DRAFT), KNOWN).facts.priceNow).toBeUndefined();
  const picked = editedFacts(withPicked(unedited(DRAFT), 'priceNow', 1), KNOWN);
  expect(picked.facts.priceNow).toBe(950_000);
  expect(picked.evidence.priceNow).toMatchObject({ from: 'page-text', text: 'High bid: $9,500' });
});

test('what the user types is kept as typed, and what he empties is gone', () => {
  const typed = editedFacts(withTyped(unedited(DRAFT), 'miles', 54_210), KNOWN);
  expect(typed.facts.miles).toBe(54_210);
  expect(typed.evidence.miles).toEqual({ from: 'typed', text: '', sure: 'certain' });
  expect(editedFacts(withTyped(unedited(DRAFT), 'miles', undefined), KNOWN).facts.miles).toBeUndefined();
});

test('a title that the setup does not know keeps its words, so that the lot is never priced as clean', () => {
  expect(editedFacts(unedited(DRAFT), KNOWN).facts.titleId).toBe('Branded, ask the office');
  expect(editedFacts({ ...unedited(DRAFT), titleId: 'rebuilt' }, KNOWN).facts.titleId).toBe('rebuilt');
});

test('the site’s venue goes before any name on the page, and the user’s choice before both', () => {
  const site = { ...KNOWN, siteVenueId: 'salt' };
  expect(editedFacts(unedited(DRAFT), site).facts.venueId).toBe('salt');
  expect(editedFacts({ ...unedited(DRAFT), venueId: 'other' }, site).facts.venueId).toBe('other');
});
