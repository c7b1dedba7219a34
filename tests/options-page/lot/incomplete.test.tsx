// @vitest-environment jsdom
import { render } from 'preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Incomplete } from '../../../options-page/lot/incomplete.tsx';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { dealOf } from '../../../src/domain/worksheet/deal-of.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { inventedSetup } from '../../domain/worksheet/invented-setup.ts';

afterEach(() => document.body.replaceChildren());

test('figures of a row whose cells may have moved count once somebody says that they are right', () => {
  const row = { field: 'row', text: '200' } as const;
  const recon = { field: 'recon', text: '1' } as const;
  const facts: LotFacts = { venueId: 'no-fees', retail: { likely: cents(1_800_000) }, unread: [recon, row] };
  const context = pricingContext(inventedSetup());
  const deal = dealOf(facts, context);
  if (deal.ok) throw new Error('there must be no max bid');
  expect(deal.problems.map(({ reason, field }) => [reason, field])).toEqual([
    ['unread-cell', 'recon'],
    ['unread-cell', 'row'],
  ]);
  const edit = { commit: vi.fn(), commitAll: vi.fn() };
  render(<Incomplete facts={facts} context={context} problems={deal.problems} edit={edit} />, document.body);
  expect(document.body.textContent).toMatch(/“200” stands beyond the last heading/);
  const buttons = [...document.querySelectorAll('button')];
  expect(buttons.map(({ textContent }) => textContent)).toEqual(['Use Setup instead', 'The figures are right']);
  buttons[1]?.click();
  expect(edit.commit).toHaveBeenCalledWith('unread', [recon], expect.anything());
  expect(dealOf({ ...facts, unread: undefined }, context).ok).toBe(true);
});
