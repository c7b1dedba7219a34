import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { readResult } from '../../../src/domain/sale/read-result.ts';
import { resultSchema } from '../../../src/domain/sale/result.ts';
import { sayResult } from '../../../src/domain/sale/result-words.ts';

test.each([
  ['w 12500', { ended: 'won', hammerCents: 1_250_000 }],
  ['W12,500', { ended: 'won', hammerCents: 1_250_000 }],
  ['won at $12.5k', { ended: 'won', hammerCents: 1_250_000 }],
  ['l 13000', { ended: 'lost', hammerCents: 1_300_000 }],
  ['l', { ended: 'lost' }],
  ['lost', { ended: 'lost' }],
  ['Lost: 13,000.50', { ended: 'lost', hammerCents: 1_300_050 }],
  ['n', { ended: 'not-sold' }],
  ['no sale 11800', { ended: 'not-sold', highCents: 1_180_000 }],
  ['p', { ended: 'pending' }],
  ['p 11800', { ended: 'pending', bidCents: 1_180_000 }],
  ['x', { ended: 'withdrawn' }],
  ['withdrawn', { ended: 'withdrawn' }],
  ['u', { ended: 'not-watched' }],
  ['not watched', { ended: 'not-watched' }],
])('“%s” is read', (text, result) => {
  expect(readResult(text)).toEqual({ ok: true, value: { result } });
});

test('proxy or live after it says how', () => {
  expect(readResult('w 12500 proxy')).toMatchObject({ value: { by: 'proxy', result: { hammerCents: 1_250_000 } } });
  expect(readResult('l live')).toMatchObject({ value: { by: 'live', result: { ended: 'lost' } } });
});

test.each([
  ['', 'empty'],
  ['12500', 'no-ending'],
  ['$12,500', 'no-ending'],
  ['w', 'won-at-what'],
  ['w 0', 'not-positive'],
  ['l -5', 'not-positive'],
  ['w abc', 'no-ending'],
  ['w 12-13k', 'two-amounts'],
  ['x 400', 'no-price'],
  ['bought 400', 'no-ending'],
  ['w 3.456', 'thousands-or-decimals'],
])('“%s” is refused with what to type instead, never guessed', (text, reason) => {
  const read = readResult(text);
  expect(read.ok).toBe(false);
  if (!read.ok && reason !== 'thousands-or-decimals') expect(read.reason).toBe(reason);
  if (!read.ok) expect(read.message.length).toBeGreaterThan(20);
});

test('whatever is read is a result that can be kept and said, and any text is answered', () => {
  const amount = fc.integer({ min: 1, max: 9_999_999 }).map((n) => cents(n * 100));
  fc.assert(
    fc.property(fc.constantFrom('w', 'l', 'n', 'p', 'won', 'lost'), amount, (word, value) => {
      const read = readResult(`${word} ${value / 100}`);
      expect(read.ok).toBe(true);
      if (!read.ok) return;
      expect(resultSchema.safeParse(read.value.result).success).toBe(true);
      expect(sayResult(read.value.result)).toContain((value / 100).toLocaleString('en-US'));
    }),
  );
  fc.assert(fc.property(fc.string(), (text) => void readResult(text)));
});
