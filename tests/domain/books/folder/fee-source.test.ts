import { describe, expect, test } from 'vitest';
import { bandInWords, feeSources } from '../../../../src/domain/books/folder/fee-source.ts';
import { feeBandSchema, feeScheduleSchema } from '../../../../src/domain/fees/fee-schedule.ts';
import { cents } from '../../../../src/domain/money/cents.ts';
import { localDateSchema } from '../../../../src/domain/time/local-date.ts';

const band = (more: object) => feeBandSchema.parse({ fromCents: 0, ...more });

describe('a band in words', () => {
  test.each([
    [{ flatCents: 450_00 }, '$450'],
    [{ ratePpm: 42_500 }, '4.25%'],
    [{ flatCents: 150_00, ratePpm: 42_500 }, '$150 and 4.25%'],
    // One that charges nothing says so, and is not an empty word.
    [{}, '$0'],
    [{ ratePpm: 20_000, minimumCents: 200_00 }, '2%, at least $200'],
    [{ ratePpm: 20_000, maximumCents: 725_00 }, '2%, at most $725'],
    [
      { flatCents: 1, ratePpm: 20_000, minimumCents: 0, maximumCents: 725_00 },
      '$0.01 and 2%, at least $0 and at most $725',
    ],
  ])('%j is “%s”', (more, words) => {
    expect(bandInWords(band(more))).toBe(words);
  });
});

const schedule = (editions: readonly object[]) =>
  feeScheduleSchema.parse({ id: 'saguaro', name: 'Saguaro buyer fees', editions });
const table = {
  label: 'Buy fee',
  bands: [
    { fromCents: 0, flatCents: 250_00 },
    { fromCents: 8_000_00, flatCents: 450_00 },
  ],
};
const on = localDateSchema.parse('2026-11-28');

describe('where a fee comes from', () => {
  test('a price on the edge of a band pays by that band, one cent below by the one before', () => {
    const at = (price: number) => feeSources([schedule([{ tables: [table] }])], on, cents(price)).sources;
    expect(at(8_000_00)).toEqual([
      { label: 'Buy fee', cents: 450_00, line: '“Saguaro buyer fees”, from $8,000: $450' },
    ]);
    expect(at(7_999_99)).toEqual([{ label: 'Buy fee', cents: 250_00, line: '“Saguaro buyer fees”, from $0: $250' }]);
  });

  test('dated rates name their date, and a charge says that it is the same at every price', () => {
    const dated = { validFrom: '2026-09-01', tables: [table], charges: [{ label: 'Gate pass', cents: 25_00 }] };
    expect(feeSources([schedule([dated])], on, cents(100_00)).sources.map(({ line }) => line)).toEqual([
      '“Saguaro buyer fees” of 2026-09-01, from $0: $250',
      '“Saguaro buyer fees” of 2026-09-01: $25 at every price',
    ]);
  });

  test('a schedule without rates on that day is left out and named, and the others stand', () => {
    const old = schedule([{ validTo: '2026-01-31', tables: [table] }]);
    const { sources, problems } = feeSources([old, schedule([{ tables: [table] }])], on, cents(100_00));
    expect(sources).toHaveLength(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain('Saguaro buyer fees');
  });
});
