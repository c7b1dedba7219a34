import { describe, expect, test } from 'vitest';
import { type FeeEdition, feeEditionSchema } from '../../../src/domain/fees/fee-schedule.ts';
import { nextEdition } from '../../../src/domain/fees/next-edition.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';

const edition = (validFrom?: string, validTo?: string): FeeEdition =>
  feeEditionSchema.parse({
    ...(validFrom && { validFrom }),
    ...(validTo && { validTo }),
    tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 10_000 }] }],
  });
const from = (editions: FeeEdition[], index: number, date: string) => nextEdition(editions, index, date as LocalDate);
const dates = (outcome: ReturnType<typeof nextEdition>) =>
  outcome.ok ? outcome.value.map((e) => `${e.validFrom ?? ''}..${e.validTo ?? ''}`) : outcome.message;

describe('a new price list', () => {
  test('ends the old one the day before and goes on without end', () => {
    expect(dates(from([edition()], 0, '2026-03-01'))).toEqual(['..2026-02-28', '2026-03-01..']);
    expect(dates(from([edition('2025-01-01')], 0, '2028-03-01'))).toEqual(['2025-01-01..2028-02-29', '2028-03-01..']);
  });

  test('starts as a copy of the old one', () => {
    const outcome = from([edition()], 0, '2026-03-01');
    expect(outcome.ok && outcome.value[1]?.tables).toEqual(edition().tables);
  });

  test('takes over an end that lies behind its start', () => {
    expect(dates(from([edition(undefined, '2026-12-31')], 0, '2026-07-01'))).toEqual([
      '..2026-06-30',
      '2026-07-01..2026-12-31',
    ]);
  });

  test('leaves an end that lies before its start where it is', () => {
    expect(dates(from([edition(undefined, '2026-01-31')], 0, '2026-07-01'))).toEqual(['..2026-01-31', '2026-07-01..']);
  });

  test('stands right behind the old one and leaves the others alone', () => {
    const editions = [edition('2025-01-01', '2025-12-31'), edition('2026-01-01')];
    expect(dates(from(editions, 0, '2025-07-01'))).toEqual([
      '2025-01-01..2025-06-30',
      '2025-07-01..2025-12-31',
      '2026-01-01..',
    ]);
  });

  test('is refused on or before the day the old one starts, and on a day that another starts', () => {
    expect(dates(from([edition('2026-03-01')], 0, '2026-03-01'))).toMatch(/start on 2026-03-01/);
    expect(dates(from([edition(undefined, '2026-02-28'), edition('2026-03-01')], 0, '2026-03-01'))).toMatch(
      /already start on 2026-03-01/,
    );
  });
});
