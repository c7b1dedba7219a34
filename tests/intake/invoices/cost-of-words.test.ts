import { expect, test } from 'vitest';
import { costOfWords } from '../../../src/intake/invoices/cost-of-words.ts';

test('sales tax is a line of its own, and a fee for the papers about it is a fee', () => {
  expect(costOfWords('sales tax 6.25%')).toBe('sales-tax');
  expect(costOfWords('city tax')).toBe('sales-tax');
  expect(costOfWords('sales tax certificate fee')).toBe('fee');
  expect(costOfWords('buy fee')).toBe('fee');
});
