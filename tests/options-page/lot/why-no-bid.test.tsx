// @vitest-environment jsdom
import { render } from 'preact';
import { afterEach, expect, test } from 'vitest';
import { WhyThisNumber } from '../../../options-page/lot/answer/why-this-number.tsx';
import { answerTable } from '../../../scripts/worksheet/answer-table.ts';
import { lotAnswer } from '../../../scripts/worksheet/lot-answer.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { SETUP, sheetOf, van } from '../../domain/appraisal/lot-for-tests.ts';

afterEach(() => render(null, document.body));

const strict = { ...SETUP, rules: { ...SETUP.rules, lossChancePpm: ppm(50_000) } };
/** Worth having on average, and one time in ten worth nothing at all. */
const risky = van({
  transport: 100_00,
  claims: [{ about: 'other', statement: 'Runs', worthIfFalse: 40_000_00 }],
});

test('a lot that only the limit on the chance of a loss refuses says so, and not that it earns too little', () => {
  const sheet = sheetOf(risky, strict);
  render(<WhyThisNumber sheet={sheet} checks={[]} risk={undefined} priceNow={undefined} />, document.body);
  const words = document.body.textContent ?? '';
  expect(words).toContain('the chance of losing money is over your limit, though the car would leave an expected $1');
  expect(words).not.toContain('your minimum profit is');
});

test('a lot that earns too little says that, whatever its risk', () => {
  const sheet = sheetOf(van({ retail: { likely: 1_000_00 } }), strict);
  render(<WhyThisNumber sheet={sheet} checks={[]} risk={undefined} priceNow={undefined} />, document.body);
  expect(document.body.textContent).toMatch(/Even at \$0 the car would leave .+, and your minimum profit is \$1,500/);
});

test('the terminal gives the same reason', () => {
  const row = { row: 2, facts: risky, faults: [], barring: [] };
  const answer = lotAnswer(row, pricingContext(strict), instant(Date.UTC(2026, 10, 25)));
  expect(answer).toMatchObject({ maxBid: null, limitedBy: 'loss-chance' });
  expect(answerTable([answer])).toMatch(/don’t bid: chance of a loss/);
});
