import { expect, test } from 'vitest';
import {
  editedFacts,
  isAsked,
  unedited,
  withDraft,
  withPicked,
  withTyped,
} from '../../src/capture/draft/draft-edit.ts';
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

test('two readings of a price are asked until one was chosen, and the choice holds while the page still says it', () => {
  const asked = unedited(DRAFT);
  expect(isAsked(asked, 'priceNow')).toBe(true);
  const picked = withPicked(asked, 'priceNow', 1);
  expect(isAsked(picked, 'priceNow')).toBe(false);
  const again = withDraft(picked, { ...DRAFT, key: 'read again' });
  expect(editedFacts(again, KNOWN).facts.priceNow).toBe(950_000);
  const other = {
    settled: false,
    readings: [reading(cents(7000_00), 'Bid: $7,000'), reading(cents(8000_00), 'Next: $8,000')],
  };
  const changed = withDraft(picked, { ...DRAFT, fields: { ...DRAFT.fields, priceNow: other } });
  expect(isAsked(changed, 'priceNow')).toBe(true);
  expect(editedFacts(changed, KNOWN).facts.priceNow).toBeUndefined();
});

test('a price that is only likely is asked where the page says another too; a certain one and one alone are not', () => {
  const likely = { ...reading(cents(9000_00), 'Bid: $9,000'), sure: 'likely' as const };
  const other = { ...reading(cents(9500_00), 'Price: $9,500'), sure: 'doubtful' as const };
  const priced = (...readings: NonNullable<DraftLot['fields']['priceNow']>['readings']) =>
    unedited({ ...DRAFT, fields: { priceNow: { settled: true, readings } } });
  expect(isAsked(priced(likely, other), 'priceNow')).toBe(true);
  expect(isAsked(priced(likely), 'priceNow')).toBe(false);
  expect(isAsked(priced(reading(cents(9000_00), 'Bid: $9,000'), other), 'priceNow')).toBe(false);
});
