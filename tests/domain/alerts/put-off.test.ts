import fc from 'fast-check';
import { expect, test } from 'vitest';
import { putOffUntil } from '../../../src/domain/alerts/lot-calls.ts';
import { offerCode, offerWords, readOfferCode } from '../../../src/domain/alerts/offer.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { bareRules, inventedLot, planFor } from './invented-lots.ts';

const CLOSE = 1_800_000_000_000;
const lot = inventedLot('a', CLOSE);
const left = (minutes: number) => CLOSE - minutes * MINUTE;

test('a call can be put off until the last one that was planned, and after that until a minute before the close', () => {
  expect(putOffUntil(lot, [60, 15, 5], 10, left(60))).toBe(left(50));
  expect(putOffUntil(lot, [60, 15, 5], 30, left(15))).toBe(left(5));
  expect(putOffUntil(lot, [60, 15, 5], 10, left(5))).toBe(left(1));
  expect(putOffUntil(lot, [60, 15, 5], 10, left(0.5))).toBeNull();
  expect(putOffUntil(lot, [], 10, left(30))).toBe(left(20));
});

test('however a call is put off, the lot is called again before it closes', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 200 }),
      fc.integer({ min: 1, max: 300 }),
      fc.uniqueArray(fc.integer({ min: 1, max: 180 }), { maxLength: 4 }),
      (minutesLeft, minutes, some) => {
        const leads = some.sort((a, b) => b - a);
        const until = putOffUntil(lot, leads, minutes, left(minutesLeft));
        if (until === null) return;
        const put = { ...lot, ownLeads: leads, putOffUntil: instant(until) };
        const { due, next } = planFor([put], left(minutesLeft), { rules: bareRules() });
        expect(due).toEqual([]);
        expect(next).toBeLessThanOrEqual(left(1));
        expect(next).toBeGreaterThan(left(minutesLeft));
      },
    ),
  );
});

test.each([
  { do: 'put-off', minutes: 10 },
  { do: 'extended', minutes: 5, from: instant(CLOSE) },
  { do: 'hand-over', to: 'The closer, Ñandú & son' },
  { do: 'done' },
  { do: 'lost' },
] as const)('an answer survives in a notice’s id: $do', (offer) => {
  expect(offerCode(offer)).not.toContain(' ');
  expect(readOfferCode(offerCode(offer))).toEqual(offer);
  expect(offerWords(offer)).not.toBe('');
});

test.each([
  '',
  'put-off',
  'put-off:0',
  'put-off:x',
  'extended:5',
  'extended:5:-1',
  'hand-over:',
  'hand-over:%',
  'done:1',
  'won',
])('what is no answer is none: “%s”', (code) => expect(readOfferCode(code)).toBeNull());
