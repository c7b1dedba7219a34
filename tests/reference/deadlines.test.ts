import * as fc from 'fast-check';
import { HyperFormula } from 'hyperformula';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import type * as z from 'zod/mini';
import { type BusinessCalendar, FEDERAL_CALENDAR } from '../../src/domain/deadline/business-calendar.ts';
import { deadlineOf } from '../../src/domain/deadline/deadline-of.ts';
import { type DeadlineRule, deadlineRuleSchema } from '../../src/domain/deadline/deadline-rule.ts';
import { holidaysOf } from '../../src/domain/deadline/us-holidays.ts';
import { addDays } from '../../src/domain/time/calendar-day.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { zone } from '../../src/domain/time/zone.ts';

const BANK: BusinessCalendar = { ...FEDERAL_CALENDAR, holidays: 'bank' };
const utc = (text: string) => instant(Date.parse(`${text}Z`));
type Given = Partial<z.input<typeof deadlineRuleSchema>>;
const rule = (given: Given): DeadlineRule =>
  deadlineRuleSchema.parse({ amount: 1, unit: 'calendar-days', from: 'sale', ...given });
const count = (from: string, given: Given, calendar = FEDERAL_CALENDAR) =>
  deadlineOf(rule(given), utc(`${from}T18:00`), { zone: zone('America/New_York'), calendar }).date;

// Holidays: 5 U.S.C. 6103(a), and for banks the Federal Reserve Banks' holiday schedule. How days are counted is each venue's
// own rule (common practice, no source).
// Computed independently: by hand on a printed calendar, and by two date libraries with the holidays listed above.
test.each([
  ['2026-11-24', { amount: 7, firstDay: 'same' }, '2026-11-30'],
  ['2026-11-24', { amount: 7 }, '2026-12-01'],
  ['2026-11-24', { amount: 30, firstDay: 'same' }, '2026-12-23'],
  ['2026-11-24', { amount: 30 }, '2026-12-24'],
  ['2026-11-24', { amount: 2, unit: 'business-days' }, '2026-11-27'],
  ['2026-11-24', { amount: 5, unit: 'business-days' }, '2026-12-02'],
  ['2026-07-01', { amount: 2, unit: 'business-days' }, '2026-07-06'],
  ['2026-12-23', { amount: 3, unit: 'business-days' }, '2026-12-29'],
] as const)('from %s, %o ends on %s (computed independently)', (from, given, date) => {
  expect(count(from, given)).toBe(date);
});

test('two business days from 2026-07-01 end on the Friday where banks count (Federal Reserve: open that Friday)', () => {
  expect(count('2026-07-01', { amount: 2, unit: 'business-days' }, BANK)).toBe('2026-07-03');
});

// Each moment by luxon's own arithmetic, written out by hand where a clock changes.
test.each([
  // 48 hours over the night on which the clock goes forward are 48 hours, an hour later on the wall.
  ['2026-03-07T17:00', 'America/New_York', { amount: 48, unit: 'hours' }, '2026-03-09T17:00'],
  ['2026-10-31T16:00', 'America/Chicago', { amount: 24, unit: 'hours' }, '2026-11-01T16:00'],
  // A cut-off of 5 PM is 5 PM on the venue's wall, on either side of a change.
  ['2026-03-06T20:00', 'America/Denver', { amount: 3, cutOff: '17:00' }, '2026-03-09T23:00'],
  ['2026-10-30T20:00', 'America/Denver', { amount: 3, cutOff: '17:00' }, '2026-11-03T00:00'],
  // Arizona keeps its clock; an evening there is the next day in UTC.
  ['2026-03-07T03:30', 'America/Phoenix', { amount: 2, cutOff: '17:00' }, '2026-03-09T00:00'],
  ['2026-07-04T06:59', 'America/Phoenix', { amount: 1, cutOff: '12:00' }, '2026-07-04T19:00'],
  ['2026-07-04T07:00', 'America/Phoenix', { amount: 1, cutOff: '12:00' }, '2026-07-05T19:00'],
  // 2:30 AM does not exist in Los Angeles on 2026-03-08: the earlier reading. 1:30 AM comes twice on 2026-11-01: the first.
  ['2026-03-07T20:00', 'America/Los_Angeles', { amount: 1, cutOff: '02:30' }, '2026-03-08T09:30'],
  ['2026-10-31T20:00', 'America/Los_Angeles', { amount: 1, cutOff: '01:30' }, '2026-11-01T08:30'],
  // Sold on Friday evening in Boise, 2 business days, Monday a holiday: Wednesday.
  ['2026-09-05T00:30', 'America/Boise', { amount: 2, unit: 'business-days', cutOff: '17:00' }, '2026-09-09T23:00'],
] as const)('from %s UTC at a venue in %s, %o ends at %s UTC (computed independently)', (from, place, given, end) => {
  const due = deadlineOf(rule(given), utc(from), { zone: zone(place), calendar: FEDERAL_CALENDAR });
  expect(new Date(due.at).toISOString().slice(0, 16)).toBe(end);
});

describe('against a spreadsheet engine (HyperFormula WORKDAY and WORKDAY.INTL)', () => {
  const holidays = Array.from({ length: 12 }, (_, i) => holidaysOf(2021 + i, 'federal'))
    .flat()
    .map((day) => day.observed);
  const engine = HyperFormula.buildFromSheets(
    { Days: holidays.map((day) => [dateCall(day)]), Sums: [] },
    { licenseKey: 'gpl-v3' },
  );
  const sums = engine.getSheetId('Sums') ?? 0;
  const ask = (formula: string): string => {
    engine.setCellContents({ sheet: sums, row: 0, col: 0 }, formula);
    const serial = Number(engine.getCellValue({ sheet: sums, row: 0, col: 0 }));
    return addDays('1899-12-30' as LocalDate, serial);
  };
  const days = fc.integer({ min: 0, max: 3600 }).map((day) => addDays('2021-01-01' as LocalDate, day));

  test('business days are counted as WORKDAY counts them, for any day and up to 60 of them', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 60 }), (from, amount) => {
        const theirs = ask(`=WORKDAY(${dateCall(from).slice(1)}, ${amount}, Days!A1:A${holidays.length})`);
        expect(count(from, { amount, unit: 'business-days' })).toBe(theirs);
      }),
      { numRuns: 300 },
    );
  });

  test('and with Sunday alone off as WORKDAY.INTL counts them', () => {
    const calendar: BusinessCalendar = { ...FEDERAL_CALENDAR, daysOff: ['sun'], holidays: 'none' };
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 60 }), (from, amount) => {
        const theirs = ask(`=WORKDAY.INTL(${dateCall(from).slice(1)}, ${amount}, 11)`);
        expect(count(from, { amount, unit: 'business-days' }, calendar)).toBe(theirs);
      }),
      { numRuns: 200 },
    );
  });

  test('a count that starts with its own day is one day behind the same count from the day before it', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 60 }), (from, amount) => {
        const dayBefore = dateCall(addDays(from, -1)).slice(1);
        const theirs = ask(`=WORKDAY(${dayBefore}, ${amount}, Days!A1:A${holidays.length})`);
        expect(count(from, { amount, unit: 'business-days', firstDay: 'same' })).toBe(theirs);
      }),
      { numRuns: 200 },
    );
  });
});

test('calendar days and cut-off hours end where luxon puts them, in six zones and on any day of ten years', () => {
  const places = ['New_York', 'Chicago', 'Denver', 'Phoenix', 'Los_Angeles', 'Anchorage'] as const;
  fc.assert(
    fc.property(
      fc.constantFrom(...places),
      fc.integer({ min: Date.UTC(2021, 0, 1), max: Date.UTC(2031, 0, 1) }),
      fc.integer({ min: 0, max: 90 }),
      // Outside the hours at which clocks change, where libraries differ on what a missing hour means.
      fc.integer({ min: 4, max: 23 }),
      (place, from, amount, hour) => {
        const name = `America/${place}`;
        const cutOff = `${String(hour).padStart(2, '0')}:15`;
        const ours = deadlineOf(rule({ amount, cutOff }), instant(from), {
          zone: zone(name),
          calendar: FEDERAL_CALENDAR,
        });
        const theirs = DateTime.fromMillis(from, { zone: name })
          .startOf('day')
          .plus({ days: amount })
          .set({ hour, minute: 15 });
        expect(ours.at).toBe(theirs.toMillis());
      },
    ),
    { numRuns: 500 },
  );
});

function dateCall(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  return `=DATE(${year},${month},${day})`;
}
