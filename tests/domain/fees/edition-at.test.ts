import { describe, expect, test } from 'vitest';
import { editionAt } from '../../../src/domain/fees/edition-at.ts';
import { feeScheduleSchema } from '../../../src/domain/fees/fee-schedule.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';

const schedule = (...spans: [string | undefined, string | undefined][]) =>
  feeScheduleSchema.parse({
    id: 'juniper',
    name: 'Juniper Flats buyer fees',
    editions: spans.map(([validFrom, validTo]) => ({
      ...(validFrom && { validFrom }),
      ...(validTo && { validTo }),
      tables: [],
    })),
  });
const on = (date: string) => date as LocalDate;

describe('the edition of a fee schedule', () => {
  const two = schedule(['2025-01-01', '2025-06-30'], ['2025-07-01', undefined]);

  test.each([
    ['2025-01-01', '2025-01-01'],
    ['2025-06-30', '2025-01-01'],
    ['2025-07-01', '2025-07-01'],
    ['2031-01-01', '2025-07-01'],
  ])('on %s is the one that started on %s: both ends count', (date, started) => {
    expect(editionAt(two, on(date))).toMatchObject({ ok: true, value: { validFrom: started } });
  });

  test('that started last holds when nobody ended the older one', () => {
    const open = schedule(['2025-07-01', undefined], [undefined, undefined], ['2025-01-01', undefined]);
    expect(editionAt(open, on('2025-08-01'))).toMatchObject({ ok: true, value: { validFrom: '2025-07-01' } });
    expect(editionAt(open, on('2024-08-01'))).toMatchObject({ ok: true, value: {} });
  });

  test('is refused by name when none holds that day', () => {
    const refused = editionAt(two, on('2024-12-31'));
    expect(refused).toMatchObject({ ok: false, reason: 'no-edition' });
    expect(refused.ok ? '' : refused.message).toContain('“Juniper Flats buyer fees” has no rates for 2024-12-31');
  });

  test('needs no date when there is only one without an end', () => {
    expect(editionAt(schedule(['2025-01-01', undefined]), undefined).ok).toBe(true);
  });

  test('needs a date when there are several, or the only one has an end', () => {
    expect(editionAt(two, undefined)).toMatchObject({ ok: false, reason: 'needs-date' });
    expect(editionAt(schedule([undefined, '2025-06-30']), undefined)).toMatchObject({
      ok: false,
      reason: 'needs-date',
    });
  });
});
