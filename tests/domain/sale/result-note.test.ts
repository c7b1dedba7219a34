import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { proxyAction, resultNoteOf } from '../../../src/domain/sale/result-note.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';

const NOW = instant(Date.UTC(2026, 3, 13, 15));
const closeAt = (at: number) =>
  closeTimeSchema.parse({
    instant: at,
    text: 'as printed',
    zone: 'America/Boise',
    how: 'stated-zone',
    doubts: [],
    otherwise: [],
  });
const typed = { result: { ended: 'lost' as const } };

test('a result is dated with the close, or with now while that is ahead or unknown', () => {
  const note = (close?: number) =>
    resultNoteOf({
      typed,
      facts: close === undefined ? {} : { close: closeAt(close) },
      sale: undefined,
      maxBid: null,
      now: NOW,
    }).at;
  expect(note(NOW - 1000)).toBe(NOW - 1000);
  expect(note(NOW + 1000)).toBe(NOW);
  expect(note()).toBe(NOW);
});

test('a correction keeps the moment and the max bid of the result before it', () => {
  const before = { at: instant(NOW - 5000), maxBidCents: cents(100) };
  const sale = { bids: [], result: before };
  expect(resultNoteOf({ typed, facts: {}, sale, maxBid: cents(999), now: NOW })).toMatchObject(before);
  const unknown = { bids: [], result: { at: before.at } };
  expect(resultNoteOf({ typed, facts: {}, sale: unknown, maxBid: cents(999), now: NOW })).not.toHaveProperty(
    'maxBidCents',
  );
});

test('proxy or live is what was typed, else what the receipts show, and nothing for a lot that was not bid on', () => {
  const facts = { proxy: cents(5) };
  const live = { bids: [{ action: 'live-bid' as const, at: NOW }] };
  const by = (over: object) => resultNoteOf({ typed, facts: {}, sale: undefined, maxBid: null, now: NOW, ...over }).by;
  expect(by({ facts })).toBe('proxy');
  expect(by({ facts, sale: live })).toBe('live');
  expect(by({ facts, sale: live, typed: { ...typed, by: 'proxy' } })).toBe('proxy');
  expect(by({})).toBeUndefined();
  expect(by({ facts, typed: { result: { ended: 'withdrawn' } } })).toBeUndefined();
});

test('a typed proxy amount is placed, raised, cut or withdrawn beside the one that stands', () => {
  expect(proxyAction(undefined, cents(5))).toBe('proxy-placed');
  expect(proxyAction(cents(5), cents(6))).toBe('proxy-raised');
  expect(proxyAction(cents(5), cents(4))).toBe('proxy-cut');
  expect(proxyAction(cents(5), undefined)).toBe('proxy-withdrawn');
  expect(proxyAction(cents(5), cents(5))).toBeNull();
  expect(proxyAction(undefined, undefined)).toBeNull();
});
