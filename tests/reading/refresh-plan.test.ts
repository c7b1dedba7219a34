import { expect, test } from 'vitest';
import type { Evidence } from '../../src/domain/lot/evidence.ts';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { changesTo } from '../../src/folds/fact-changes.ts';
import { refreshPlan } from '../../src/reading/refresh-plan.ts';

const close = (hours: number, doubts: 'no-zone'[] = []): LotFacts['close'] => ({
  instant: instant(Date.UTC(2026, 10, 28, hours)),
  text: 'as stated',
  zone: zone('America/Boise'),
  how: 'stated-zone',
  doubts,
  otherwise: [],
});
const says = (sure: Evidence['sure']): Evidence => ({ from: 'page-text', text: 'Current bid: $9,400', sure });
const KNOWN: LotFacts = { priceNow: cents(8900_00), close: close(5), miles: 40_000 };

function plan(facts: LotFacts, sure: Evidence['sure'] = 'certain') {
  const evidence = Object.fromEntries(Object.keys(facts).map((field) => [field, says(sure)]));
  return refreshPlan({ facts, evidence }, changesTo(KNOWN, facts));
}

test('a page refreshes the price now and the close, with what they were and where they were read', () => {
  const made = plan({ priceNow: cents(9400_00), close: close(6) });
  expect(made?.set).toEqual({ priceNow: 940_000, close: close(6) });
  expect(made?.was).toEqual({ priceNow: 890_000, close: close(5) });
  expect(made?.evidence.priceNow).toEqual(says('certain'));
});

test('nothing else of the lot is touched, whatever the page says of it', () => {
  expect(plan({ miles: 1, make: 'Other', lotNumber: '9', venueName: 'Elsewhere' })).toBeNull();
});

test('what is doubtful waits for the user: a doubtful price, a close in doubt, a lower bid', () => {
  expect(plan({ priceNow: cents(9400_00) }, 'doubtful')).toBeNull();
  expect(plan({ close: close(6, ['no-zone']) })).toBeNull();
  expect(plan({ priceNow: cents(8000_00) })).toBeNull();
});

test('a page that says what is known makes no entry', () => {
  expect(plan({ priceNow: cents(8900_00), close: close(5) })).toBeNull();
});
