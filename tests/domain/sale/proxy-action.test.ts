import { expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { proxyAction } from '../../../src/domain/sale/proxy-action.ts';

test('a typed proxy amount is placed, raised, cut or withdrawn beside the one that stands', () => {
  expect(proxyAction(undefined, cents(5))).toBe('proxy-placed');
  expect(proxyAction(cents(5), cents(6))).toBe('proxy-raised');
  expect(proxyAction(cents(5), cents(4))).toBe('proxy-cut');
  expect(proxyAction(cents(5), undefined)).toBe('proxy-withdrawn');
  expect(proxyAction(cents(5), cents(5))).toBeNull();
  expect(proxyAction(undefined, undefined)).toBeNull();
});
