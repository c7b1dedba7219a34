import { expect, test } from 'vitest';
import type { DraftFields, DraftLots, Sure, TiedField } from '../../src/capture/draft/draft-lot.ts';
import { type LotFacts, lotIdSchema } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { entryIdSchema } from '../../src/journal/ids.ts';
import { refreshPlan } from '../../src/reading/refresh-plan.ts';

const VIN = '5ZXB38E89ME487234';
const NOW = instant(Date.UTC(2026, 10, 27, 15));
const close = (hours: number, doubts: 'no-zone'[] = []): CloseTime => ({
  instant: instant(Date.UTC(2026, 10, 28, hours)),
  text: 'as stated',
  zone: zone('America/Boise'),
  how: 'stated-zone',
  doubts,
  otherwise: [],
});
const KNOWN: LotFacts = { vin: VIN, priceNow: cents(8900_00), close: close(5), miles: 40_000 };
const ADDRESS = 'https://sale.example/lot/7';

function watched(facts: LotFacts = KNOWN): LotState {
  const id = '01ARZ3NDEKTSV4RRFFQ69G5FAV';
  return {
    id: lotIdSchema.parse(id),
    facts,
    evidence: {},
    source: 'page',
    addedAt: NOW,
    changedAt: NOW,
    dropped: false,
    bornIn: entryIdSchema.parse(id),
  };
}

interface Said {
  readonly vin?: string | readonly string[];
  readonly priceNow?: number;
  readonly close?: CloseTime;
  readonly miles?: number;
  readonly make?: string;
  readonly year?: number;
  readonly sure?: Sure;
  readonly tied?: TiedField[];
}

/** A page that says so of one lot. */
function page({ vin = VIN, priceNow, close: closes, miles, make, year, sure = 'certain', tied }: Said): DraftLots {
  const field = <Value>(...values: Value[]) => ({
    settled: values.length === 1,
    readings: values.map((value) => ({ value, from: 'page-text' as const, text: `said ${String(value)}`, sure })),
  });
  const fields: DraftFields = {
    vin: field(...(typeof vin === 'string' ? [vin] : vin)),
    ...(priceNow === undefined ? {} : { priceNow: field(cents(priceNow * 100)) }),
    ...(closes === undefined ? {} : { close: field(closes) }),
    ...(miles === undefined ? {} : { miles: field(miles) }),
    ...(make === undefined ? {} : { make: field(make) }),
    ...(year === undefined ? {} : { year: field(year) }),
  };
  const lot = { key: 'k', heading: 'h', pageUrl: ADDRESS, fields, tied: tied ?? ['priceNow', 'close'] };
  return { kind: 'one', pageUrl: ADDRESS, readAt: NOW, lots: [lot], notes: [] };
}

const plan = (said: Said, lots = [watched()]) => refreshPlan(page(said), lots, { venues: [], titles: [] });

test('a page refreshes the price now and the close, with what they were and where they were read', () => {
  const made = plan({ priceNow: 9400, close: close(6) });
  expect(made?.set).toEqual({ priceNow: 940_000, close: close(6) });
  expect(made?.was).toEqual({ priceNow: 890_000, close: close(5) });
  expect(made?.evidence.priceNow).toEqual({ from: 'page-text', text: 'said 940000', sure: 'certain' });
  expect(made?.asked).toEqual([]);
});

test('nothing else of the lot is touched, whatever the page says of it', () => {
  expect(plan({ miles: 1, priceNow: 8900 })?.set).toEqual({});
});

test('what the page does not tie to the VIN is neither written nor asked', () => {
  const made = plan({ priceNow: 9400, close: close(6), tied: ['close'] });
  expect(made?.set).toEqual({ close: close(6) });
  expect(made?.asked).toEqual([]);
});

test('what is doubtful waits for the user: a doubtful price, a close in doubt', () => {
  expect(plan({ priceNow: 9400, sure: 'doubtful' })?.set).toEqual({});
  expect(plan({ close: close(6, ['no-zone']) })?.set).toEqual({});
});

test.each([
  ['falls', { priceNow: 8000 }, 'lower'],
  ['doubles', { priceNow: 17_800 }, 'leap'],
  ['leaps by half', { priceNow: 13_400 }, 'leap'],
  ['closes sooner', { close: close(4) }, 'sooner'],
  ['closes the next day', { close: close(29) }, 'moved'],
] as const)('what %s is asked, not written', (_, said, why) => {
  const made = plan(said);
  expect(made?.set).toEqual({});
  expect(made?.asked.map((one) => [one.field, one.why])).toEqual([[Object.keys(said)[0], why]]);
});

test.each([
  ['another make', { make: 'Tamarack' }, { make: 'Larkspur' }],
  ['another year', { year: 2020 }, { year: 2021 }],
  ['a year that the VIN rules out, where none is saved', { year: 2020 }, {}],
] as const)('under the name of %s nothing is written or taken as seen again, and all is asked', (_, said, known) => {
  const made = plan({ ...said, priceNow: 9400, close: close(6) }, [watched({ ...KNOWN, ...known })]);
  expect(made?.set).toEqual({});
  expect(made?.asked.map((one) => [one.field, one.why])).toEqual([
    ['priceNow', 'other-car'],
    ['close', 'other-car'],
  ]);
  expect(plan({ ...said, priceNow: 8900 }, [watched({ ...KNOWN, ...known })])?.still).toBeUndefined();
});

test('a make in other letters, with more or fewer words, is the same make', () => {
  const known = [watched({ ...KNOWN, make: 'Dunmore', year: 2021 })];
  expect(plan({ priceNow: 9400, make: 'DUNMORE Motors', year: 2021 }, known)?.set).toEqual({ priceNow: 940_000 });
});

test('a price that was not known is written, and a small one may double only when asked', () => {
  const { priceNow: _, ...unpriced } = KNOWN;
  expect(plan({ priceNow: 44_000 }, [watched(unpriced)])?.set.priceNow).toBe(4_400_000);
  expect(plan({ priceNow: 500 }, [watched({ ...KNOWN, priceNow: cents(250_00) })])?.asked.length).toBe(1);
});

test('a lot that is known only by its page gets nothing written: the VIN itself must be there on both sides', () => {
  const { vin: _, ...nameless } = KNOWN;
  const made = plan({ priceNow: 9400 }, [watched({ ...nameless, pageUrl: ADDRESS })]);
  expect(made === null || Object.keys(made.set).length === 0).toBe(true);
});

test('with two VINs on the page it is about no watched lot, though the address is the same', () => {
  expect(
    plan({ vin: [VIN, '5ZXA9NB95LC347889'], priceNow: 9400 }, [watched({ ...KNOWN, pageUrl: ADDRESS })]),
  ).toBeNull();
});

test('a page that says what is known makes no entry', () => {
  expect(plan({ priceNow: 8900, close: close(5) })?.set).toEqual({});
});

test('a price that stands unchanged is told as seen again, where the page ties it to the VIN and says it without doubt', () => {
  const still = (said: Said) => plan(said)?.still?.set;
  expect(still({ priceNow: 8900 })).toEqual({ priceNow: 890_000 });
  expect(still({ priceNow: 9100 })).toBeUndefined();
  expect(still({ priceNow: 8900, tied: ['close'] })).toBeUndefined();
  expect(still({ priceNow: 8900, sure: 'doubtful' })).toBeUndefined();
});
