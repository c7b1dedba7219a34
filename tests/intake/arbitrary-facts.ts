import fc from 'fast-check';
import { type LotFacts, lotFactsSchema } from '../../src/domain/lot/lot.ts';

/** Text that a spreadsheet, a CSV reader or this tool's own reading might take for something else. */
const awkward = fc.oneof(
  fc.constantFrom(
    '=1+1',
    '+SUM(A1:A2)',
    '-2*3',
    '@x',
    '\tx',
    "'=x",
    "'",
    'n/a',
    '-',
    '0042',
    '9-3',
    '1E5',
    'TRUE',
    ' x ',
    '; a',
    'a;b',
  ),
  fc.string({ unit: 'binary-ascii', minLength: 1, maxLength: 12 }),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
  fc.constantFrom('Larkspur', 'Hauler 250', 'Saguaro Flats', 'Clean', 'saguaro'),
);
// Null characters are the one thing that reading drops: they say nothing.
const text = awkward.filter((value) => value.length <= 200 && !value.includes('\0'));
const cents = fc.integer({ min: 0, max: 20_000_000 });
const vin = fc.oneof(
  fc.constantFrom('1ZL3H4C21M0104471', '11111111111111111', '12345678901234567', '1ZL3H4C', ''),
  fc.string({ unit: fc.constantFrom(...'0123456789ABCDEFGHJKLMNPRSTUVWXYZ'), minLength: 17, maxLength: 17 }),
);
const estimate = fc.tuple(cents, cents, cents, fc.boolean(), fc.boolean()).map(([a, b, c, hasLow, hasHigh]) => {
  const [low = 0, likely = 0, high = 0] = [a, b, c].sort((x, y) => x - y);
  return { likely, ...(hasLow ? { low } : {}), ...(hasHigh ? { high } : {}) };
});
const close = fc.record({
  instant: fc.integer({ min: Date.parse('2024-01-01'), max: Date.parse('2030-01-01') }),
  text,
  zone: fc.constantFrom('America/New_York', 'America/Boise', 'America/Phoenix', 'UTC'),
  how: fc.constantFrom('stated-zone', 'venue-zone', 'picked', 'countdown'),
  doubts: fc.subarray(['gap', 'overlap', 'no-zone']),
  otherwise: fc.array(fc.integer({ min: 0, max: 2e12 }), { maxLength: 2 }),
});

/** Any facts that the schema allows, awkward ones included. */
export const arbitraryFacts: fc.Arbitrary<LotFacts> = fc
  .record(
    {
      vin,
      year: fc.integer({ min: 1886, max: 2100 }),
      make: text,
      model: text,
      trim: text,
      miles: fc.integer({ min: 0, max: 2_000_000 }),
      lotNumber: text,
      venueId: text,
      venueName: text,
      sale: text,
      seller: text,
      location: text,
      close,
      priceNow: cents,
      increment: cents.filter((value) => value > 0),
      retail: estimate,
      comps: fc.array(
        fc.record({ kind: fc.constantFrom('sold', 'asking'), price: cents.filter((value) => value > 0) }),
        {
          maxLength: 2,
        },
      ),
      claims: fc.array(
        fc.record({
          about: fc.constantFrom('drive', 'title'),
          statement: fc.string({ minLength: 1, maxLength: 9 }),
          worthIfFalse: cents,
        }),
        { maxLength: 2 },
      ),
      recon: fc.array(
        fc.record({
          label: fc.constantFrom('Recon', 'Tires'),
          amount: estimate,
          chance: fc.constantFrom(1_000_000, 500_000),
        }),
        { maxLength: 3 },
      ),
      titleId: fc.oneof(text, fc.constantFrom('clean', 'salvage')),
      transport: cents,
      proxy: cents,
      funding: fc.constantFrom('floor', 'cash'),
      unread: fc.constantFrom([{ field: 'recon', text: 'about 800?' }], [{ field: 'row', text: 'one key' }]),
      notes: fc.oneof(text, fc.constantFrom('two\nlines', 'two\r\nlines\r', 'x'.repeat(4000))),
      pageUrl: fc.webUrl({ size: 'small' }),
    },
    { requiredKeys: [] },
  )
  .map((facts) => lotFactsSchema.parse(facts));
