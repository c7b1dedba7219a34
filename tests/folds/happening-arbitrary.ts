import fc from 'fast-check';
import type { Month } from '../../src/domain/books/month.ts';
import type { Evidence } from '../../src/domain/lot/evidence.ts';
import type { LotFacts, LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { ppm } from '../../src/domain/money/rate.ts';
import { standingCostsSchema } from '../../src/domain/setup/money-rules.ts';
import { storeSchema } from '../../src/domain/setup/store.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import type { HappeningKind, HappeningOf } from '../../src/journal/happening.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import { clockHappenings, someClose } from './clock-arbitrary.ts';
import { attachment, bidAction, result, someCents } from './sale-arbitrary.ts';

/** What is there when something happens, for it to be about. */
export interface There {
  readonly lot: LotId;
  /** The entry that opened a dispute. */
  readonly dispute: EntryId;
  readonly entry: EntryId;
  readonly newLot: () => LotId;
}

/** One happening, once it is known what is there. */
export type Telling<Kind extends HappeningKind> = (there: There) => HappeningOf<Kind>;

const WHEN = instant(Date.UTC(2026, 3, 14));
const DATE = '2026-11-28' as LocalDate;
const amount = fc.integer({ min: 1, max: 9 }).map(cents);
const bankLine = (i: number, of: number) => ({
  key: `…4471|F${i}`,
  date: DATE,
  cents: cents(-100 * of),
  text: 'CHECK',
  check: String(i),
});

const evidence: fc.Arbitrary<Evidence> = fc.record({
  from: fc.constantFrom('typed', 'file', 'page-text'),
  text: fc.string({ maxLength: 10 }),
  sure: fc.constantFrom('certain', 'doubtful'),
});

export const someFacts: fc.Arbitrary<LotFacts> = fc.record(
  {
    vin: fc.constantFrom('0EXAMPLE000000001', '0EXAMPLE000000002'),
    make: fc.string({ unit: 'binary', maxLength: 8 }),
    miles: fc.nat(200_000),
    priceNow: fc.nat(5_000_000).map(cents),
    notes: fc.string({ maxLength: 8 }),
    close: someClose,
  },
  { requiredKeys: [] },
);

const field = fc.constantFrom<keyof LotFacts>('vin', 'make', 'miles', 'priceNow', 'notes');
const alertKeys = fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1, maxLength: 3 });

/** Every kind of happening that there is: one without examples does not compile. */
export const HAPPENINGS: { readonly [Kind in HappeningKind]: fc.Arbitrary<Telling<Kind>> } = {
  ...clockHappenings,
  'lots-added': fc.array(someFacts, { minLength: 1, maxLength: 3 }).map((all) => ({ newLot }) => ({
    kind: 'lots-added',
    source: 'typed',
    lots: all.map((facts) => ({ id: newLot(), facts, evidence: {} })),
  })),
  'lot-changed': fc
    .record({
      kind: fc.constant('lot-changed' as const),
      set: someFacts,
      clear: fc.uniqueArray(field, { maxLength: 2 }),
      evidence: fc.dictionary(field, evidence, { maxKeys: 2 }),
    })
    .map((told) => () => told),
  'lot-dropped': fc.constant(() => ({ kind: 'lot-dropped' })),
  'bid-noted': bidAction.map((bid) => () => ({ kind: 'bid-noted', bid })),
  'result-noted': fc.tuple(result, fc.option(someCents, { nil: undefined })).map(([one, planned]) => () => ({
    kind: 'result-noted',
    result: one,
    at: instant(Date.UTC(2026, 3, 11)),
    ...(planned !== undefined && { plannedCents: planned }),
  })),
  'risk-accepted': fc.tuple(someCents, fc.option(someCents)).map(([bid, maxBidCents]) => () => ({
    kind: 'risk-accepted',
    cents: bid,
    maxBidCents,
    why: 'A customer waits for it.',
    at: WHEN,
  })),
  'attachment-kept': attachment.map((one) => () => ({ kind: 'attachment-kept', attachment: one })),
  'step-noted': fc
    .record({
      kind: fc.constant('step-noted' as const),
      step: fc.constantFrom('pay' as const, 'title' as const, 'refund' as const),
      done: fc.boolean(),
      at: fc.constant(WHEN),
      cents: someCents,
    })
    .map((told) => () => told),
  'dispute-opened': fc.constantFrom('hidden-defect' as const, 'other' as const).map((reason) => () => ({
    kind: 'dispute-opened',
    opened: { side: 'ours', reason, words: 'It leaks.', at: WHEN, needs: ['Pictures'] },
  })),
  'dispute-changed': fc.constant(({ dispute }) => ({
    kind: 'dispute-changed',
    dispute,
    set: { askedCents: cents(50_000) },
    clear: ['next'],
  })),
  'dispute-stepped': fc.constant(({ dispute }) => ({
    kind: 'dispute-stepped',
    dispute,
    step: { what: 'got', need: 'Pictures', at: WHEN },
  })),
  'dispute-closed': fc.constantFrom('dropped' as const, 'sale-undone' as const).map((ended) => ({ dispute }) => ({
    kind: 'dispute-closed',
    dispute,
    outcome: { ended, at: WHEN, ...(ended === 'sale-undone' && { cents: cents(-20_000) }) },
  })),
  'plan-choice': fc
    .constantFrom('pinned' as const, 'skipped' as const, 'plan-ignored' as const, null)
    .map((choice) => () => ({ kind: 'plan-choice', choice })),
  'purse-set': fc.option(someCents).map((cash) => () => ({
    kind: 'purse-set',
    purse: cash === null ? null : { cashCents: cash, countedAt: WHEN, until: 'weekend' },
  })),
  'setup-changed': fc.tuple(fc.string({ maxLength: 5 }), fc.option(fc.nat(50_000))).map(([name, pack]) => () => ({
    kind: 'setup-changed',
    set: {
      store: storeSchema.parse({ name, zone: 'America/Boise' }),
      ...(pack !== null && { costs: standingCostsSchema.parse({ packCents: pack }) }),
    },
  })),
  'corrections-switched': fc
    .tuple(fc.constantFrom('retailLevel' as const, 'canceled' as const), fc.option(fc.nat(90_000)))
    .map(([id, by]) => () => ({
      kind: 'corrections-switched',
      set: {
        [id]:
          by === null
            ? null
            : {
                since: WHEN,
                cases: 9,
                ...(id === 'canceled' ? { chancePpm: ppm(by) } : { factorPpm: ppm(950_000 + by) }),
              },
      },
    })),
  'alerts-shown': alertKeys.map((keys) => () => ({ kind: 'alerts-shown', keys })),
  'clock-put-right': fc
    .integer({ min: 1, max: 3 })
    .map((hours) => () => ({ kind: 'clock-put-right', showed: instant(WHEN + hours * HOUR), to: WHEN })),
  'alerts-voided': alertKeys.map((keys) => () => ({ kind: 'alerts-voided', keys })),
  'costs-booked': amount.map((of) => ({ lot }) => ({
    kind: 'costs-booked',
    date: DATE,
    paid: 'owed',
    lines: [{ lot, cost: 'fee', label: 'Buy fee', cents: of }],
  })),
  'invoice-confirmed': amount.map((of) => ({ lot }) => ({
    kind: 'invoice-confirmed',
    venueId: 'saguaro',
    document: { file: 'a.csv' },
    costs: [{ lot, cost: 'hammer', label: 'Vehicle', cents: of, date: DATE, number: '7', due: DATE }],
    payments: [{ lot, cents: of, date: DATE }],
  })),
  'line-corrected': fc.option(amount).map((of) => ({ lot, dispute }) => ({
    kind: 'line-corrected',
    lot,
    line: `${dispute}/0`,
    to: of === null ? null : { cents: of, number: '8' },
  })),
  'settlement-booked': amount.map((of) => ({ lot, dispute }) => ({
    kind: 'settlement-booked',
    dispute,
    lot,
    date: DATE,
    label: 'Price adjusted',
    cents: cents(-of),
  })),
  'payment-booked': amount.map((of) => ({ lot }) => ({
    kind: 'payment-booked',
    date: DATE,
    lines: [{ lot, cents: cents(-of) }],
  })),
  'floor-booked': amount.map((of) => ({ lot }) => ({ kind: 'floor-booked', lot, move: 'draw', cents: of, date: DATE })),
  'outcome-booked': fc
    .tuple(amount, fc.constantFrom('retail' as const, 'wholesale' as const))
    .map(([priceCents, buyer]) => ({ lot }) => ({ kind: 'outcome-booked', lot, date: DATE, priceCents, buyer })),
  'paper-noted': fc.boolean().map((here) => ({ lot }) => ({
    kind: 'paper-noted',
    lot,
    paper: 'title',
    ...(here && { date: DATE }),
  })),
  'invoice-mapped': fc.constantFrom('vin' as const, null).map((holds) => () => ({
    kind: 'invoice-mapped',
    venueId: 'saguaro',
    mapping: { VIN: holds },
  })),
  'bank-read': fc.integer({ min: 1, max: 3 }).map((count) => () => ({
    kind: 'bank-read',
    account: '…4471',
    file: 'november.ofx',
    from: DATE,
    to: DATE,
    closing: cents(100_000),
    lines: Array.from({ length: count }, (_, i) => bankLine(i, count)),
    ...(count === 3 && { dropped: ['…4471|F9'] }),
  })),
  'bank-matched': fc.integer({ min: 0, max: 2 }).map((i) => ({ entry }) => ({
    kind: 'bank-matched',
    matches: [{ lines: [`…4471|F${i}`], booked: [`${entry}/0`] }],
  })),
  'bank-parted': fc.integer({ min: 0, max: 2 }).map((i) => () => ({ kind: 'bank-parted', lines: [`…4471|F${i}`] })),
  'bank-left-out': fc
    .integer({ min: 0, max: 2 })
    .map((i) => () => ({ kind: 'bank-left-out', lines: [`…4471|F${i}`], why: 'Not for a car' })),
  'month-closed': fc.constantFrom('2026-10', '2026-11').map((month) => () => ({
    kind: 'month-closed',
    month: month as Month,
    by: 'Bookkeeper',
    transactions: [],
  })),
  undone: fc.constant(({ entry }) => ({ kind: 'undone', entry })),
};
