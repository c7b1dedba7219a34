import fc from 'fast-check';
import { type LotFacts, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { LARGEST_CENTS } from '../../../src/domain/money/cents.ts';

/** Nothing, one and ordinary amounts. */
const PLAIN = [0, 1, 99, 100, 65_000, 1_500_000, 1_800_000, 3_190_000];
const chance = fc.constantFrom(0, 1, 250_000, 999_999, 1_000_000);
const year = fc.constantFrom(1886, 1900, 1981, 2020, 2100);
const miles = fc.constantFrom(0, 1, 60_000, 2_000_000);
const moment = fc.constantFrom(0, 1, 1_795_900_000_000, 4_102_444_800_000, 8.64e15);
const word = fc.constantFrom('', 'ocotillo', 'clean', 'Ocotillo Truck Sale', '__proto__', '\0', '🚚', 'x'.repeat(200));

function factsMadeOf(amounts: readonly number[]): fc.Arbitrary<LotFacts> {
  const amount = fc.constantFrom(...amounts);
  const some = amount.filter((cents) => cents > 0);
  const signed = fc.tuple(amount, fc.boolean()).map(([cents, off]) => (off ? -cents : cents));
  const estimate = fc.tuple(amount, amount, amount, fc.boolean(), fc.boolean()).map(([a, b, c, hasLow, hasHigh]) => {
    const [low = 0, likely = 0, high = 0] = [a, b, c].sort((x, y) => x - y);
    return { likely, ...(hasLow ? { low } : {}), ...(hasHigh ? { high } : {}) };
  });

  const comp = fc
    .record(
      {
        kind: fc.constantFrom('sold' as const, 'asking' as const),
        price: some,
        miles,
        year,
        differences: fc.array(fc.record({ label: fc.constant('Tow package'), cents: signed }), { maxLength: 2 }),
        daysListed: fc.constantFrom(0, 3650),
        leftOut: fc.boolean(),
      },
      { requiredKeys: ['kind', 'price'] },
    )
    .filter(({ price, differences = [] }) => differences.reduce((sum, one) => sum + one.cents, 0) > -price / 2);

  const ceiling = fc.record({
    kind: fc.constantFrom('new' as const, 'in-stock' as const),
    label: fc.constant('New, after its rebate'),
    list: some,
    markup: chance,
    rebate: amount,
    cheaperBy: signed,
    inStock: fc.constantFrom(0, 1, 99),
  });

  const claim = fc.record(
    {
      about: fc.constantFrom('mileage' as const, 'title' as const),
      statement: fc.constantFrom('41,000 miles', 'Clean'),
      evidence: fc.constantFrom('stated' as const, 'confirmed' as const, 'refuted' as const),
      worthIfFalse: amount,
      chanceFalse: chance,
    },
    { requiredKeys: ['about', 'statement', 'worthIfFalse'] },
  );

  const close = fc.record({
    instant: moment,
    text: fc.constant('Saturday'),
    zone: fc.constantFrom('America/Phoenix', 'UTC'),
    how: fc.constantFrom('picked' as const, 'venue-zone' as const),
    doubts: fc.constant([]),
    otherwise: fc.constant([]),
  });

  return fc
    .record(
      {
        vin: fc.constantFrom('1ZL3H4C21M0104471', '11111111111111111', ''),
        year,
        make: word,
        miles,
        venueId: fc.constantFrom('ocotillo', 'no-fees', 'nowhere', ''),
        close,
        sealed: fc.oneof(
          fc.constant({}),
          estimate.map((rival) => ({ rival })),
        ),
        priceNow: amount,
        // A step of a cent makes a billion prices of a large retail; searching them one by one would never end.
        increment: some,
        retail: estimate,
        comps: fc.array(comp, { maxLength: 3 }),
        ceilings: fc.array(ceiling, { maxLength: 2 }),
        claims: fc.array(claim, { maxLength: 2 }),
        recon: fc.array(fc.record({ label: fc.constant('Tires'), amount: estimate, chance }), { maxLength: 2 }),
        titleId: fc.constantFrom('clean', 'rebuilt', 'unheard of'),
        transport: amount,
        proxy: amount,
        funding: fc.constantFrom('floor' as const, 'cash' as const),
        unread: fc.constant([{ field: 'recon' as const, text: 'about 800?' }]),
        notes: word,
      },
      { requiredKeys: [] },
    )
    .map((facts) => lotFactsSchema.parse(facts));
}

/** Facts made of nothing, one and ordinary amounts: what slips of the keyboard leave. */
export const plainFacts = factsMadeOf(PLAIN);

/** Whatever the journal may hold of a lot, however little of it anybody can have meant. */
export const hostileFacts = factsMadeOf([...PLAIN, 999_999_999_900, LARGEST_CENTS]);

/** Facts whose price can't be worked out whatever is done, as a mistake of ours would have it. */
export function poisoned(facts: LotFacts, field: keyof LotFacts = 'retail'): LotFacts {
  return Object.defineProperty({ ...facts }, field, {
    enumerable: true,
    get() {
      throw new RangeError('an amount came out as NaN cents');
    },
  });
}
