import fc from 'fast-check';
import { COST_KINDS } from '../../../src/domain/accounts/cost-kind.ts';
import type { CarBookings } from '../../../src/domain/books/post/lot-transactions.ts';
import { type LotId, lotIdSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';

export const lotNumber = (n: number): LotId => lotIdSchema.parse(`01HX${String(n).padStart(22, '0')}`);

const date = fc.nat({ max: 150 }).map((days) => addDays('2026-08-20' as LocalDate, days));
const size = fc.integer({ min: 1, max: 4_000_000 }).map(cents);
const either = fc.oneof(
  { weight: 5, arbitrary: size },
  size.map((amount) => cents(-amount)),
);
/** Words as bills have them, some of which mean something to a journal's reader. */
const words = fc.oneof(
  fc.constantFrom('Buy fee', 'Gate pass; paid', 'Freight | Tucson', '  two  blanks  ', '$5 = "five" (net)', '* ! #'),
  fc.string({ minLength: 1, maxLength: 24 }),
);

/** The number of a bill or a check, as it may be printed. */
const paper = fc.option(
  fc.record({ number: fc.oneof(fc.constantFrom('40117', '1002 (copy)', 'A;7: "x"', '  '), words) }),
  { nil: undefined },
);

/** The life of one car in the books, in whatever order and however foolish. */
export const randomCar = (n: number): fc.Arbitrary<CarBookings> =>
  fc
    .record({
      name: words,
      costs: fc.array(
        fc.record({
          cost: fc.constantFrom(...COST_KINDS),
          label: words,
          cents: either,
          date,
          paid: fc.constantFrom('owed' as const, 'bank' as const),
          payee: fc.option(words, { nil: undefined }),
          document: paper,
        }),
        { maxLength: 7 },
      ),
      payments: fc.array(
        fc.record({ cents: either, date, payee: fc.option(words, { nil: undefined }), document: paper }),
        { maxLength: 3 },
      ),
      floor: fc.array(
        fc.record({ move: fc.constantFrom('draw' as const, 'payoff' as const), cents: size, date, document: paper }),
        { maxLength: 3 },
      ),
      outcome: fc.option(
        fc.record({
          date,
          priceCents: size,
          buyer: fc.constantFrom('retail' as const, 'business' as const, 'wholesale' as const),
        }),
        { nil: undefined },
      ),
      undoneOn: fc.option(date, { nil: undefined, freq: 3 }),
    })
    .map((car) => ({
      ...car,
      lot: lotNumber(n),
      costs: car.costs.map((cost, i) => ({ ...cost, key: `${n}/c${i}` })),
      payments: car.payments.map((payment, i) => ({ ...payment, key: `${n}/p${i}` })),
      floor: car.floor.map((move, i) => ({ ...move, key: `${n}/f${i}` })),
    }));

export const randomCars = (most: number): fc.Arbitrary<CarBookings[]> =>
  fc
    .integer({ min: 1, max: most })
    .chain((count) => fc.tuple(...Array.from({ length: count }, (_, n) => randomCar(n))));
