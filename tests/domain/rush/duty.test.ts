import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dutyAt, dutyOf, dutyWords } from '../../../src/domain/rush/duty.ts';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import { rushSchema } from '../../../src/domain/setup/store.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { BOISE } from '../alerts/invented-lots.ts';

const SATURDAY = '2026-11-28' as LocalDate;

test('hours that touch are one band, and the plan says who is there when, with the gap named', () => {
  const rush = rushSchema.parse({
    weekly: [
      { weekday: 'sat', from: '10:00', to: '12:00', who: 'the manager' },
      { weekday: 'sat', from: '12:00', to: '15:00', who: 'the salesperson' },
      { weekday: 'sat', from: '15:00', to: '17:00' },
    ],
  });
  const [band, ...others] = rushCalendar(rush, BOISE, 30).bandsOn(SATURDAY);
  expect(others).toEqual([]);
  expect(dutyWords(band?.duty ?? [], BOISE)).toBe(
    'the manager 10:00 AM to 12:00 PM, the salesperson 12:00 PM to 3:00 PM, nobody 3:00 PM to 5:00 PM',
  );
});

test('where nobody is named for any hours, nothing is said of duty', () => {
  const rush = rushSchema.parse({ weekly: [{ weekday: 'sat', from: '10:00', to: '17:00' }] });
  expect(rushCalendar(rush, BOISE, 30).bandsOn(SATURDAY)[0]?.duty).toEqual([]);
});

test('every moment of the hours is in one stretch, with everybody who is named for it', () => {
  const hours = fc.record({
    from: fc.integer({ min: 0, max: 50 }),
    length: fc.integer({ min: 1, max: 20 }),
    who: fc.option(fc.constantFrom('a', 'b', 'c'), { nil: undefined }),
  });
  fc.assert(
    fc.property(fc.array(hours, { maxLength: 6 }), fc.integer({ min: 0, max: 70 }), (list, at) => {
      const spans = list.map(({ from, length, who }) => ({ from: instant(from), to: instant(from + length), who }));
      const there = spans.filter(({ from, to }) => at >= from && at < to);
      const found = dutyOf(spans).filter(({ from, to }) => at >= from && at < to);
      expect(found).toHaveLength(there.length === 0 ? 0 : 1);
      const names = new Set(there.flatMap(({ who }) => who ?? []));
      expect(new Set(dutyAt(dutyOf(spans), at)?.who?.split(' and '))).toEqual(names);
    }),
  );
});
