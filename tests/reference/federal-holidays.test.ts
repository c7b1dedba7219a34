import fedHolidays from '@18f/us-federal-holidays';
import { describe, expect, test } from 'vitest';
import { FEDERAL_CALENDAR, whyClosed } from '../../src/domain/deadline/business-calendar.ts';
import { holidaysOf } from '../../src/domain/deadline/us-holidays.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { weekdayOf } from '../../src/domain/time/wall-clock.ts';

const observed = (year: number) => holidaysOf(year, 'federal').map((day) => day.observed);
const inYear = (year: number, days: readonly string[]) =>
  days.map((day) => (day.length === 10 ? day : `${year}-${day}`));

// The lists that the Office of Personnel Management publishes each year for offices that work Monday to Friday.
const OPM: readonly (readonly [year: number, source: string, days: readonly string[]])[] = [
  [
    2012,
    'OPM list for 2012 as printed on 2012-01-02; before Juneteenth',
    ['01-02', '01-16', '02-20', '05-28', '07-04', '09-03', '10-08', '11-12', '11-22', '12-25'],
  ],
  [
    2021,
    'OPM list for 2021 as printed, with Juneteenth on Friday, June 18',
    ['01-01', '01-18', '02-15', '05-31', '06-18', '07-05', '09-06', '10-11', '11-11', '11-25', '12-24'],
  ],
  [
    2022,
    'OPM list for 2022, from memory; its New Year’s Day was kept on Friday, December 31, 2021',
    ['2021-12-31', '01-17', '02-21', '05-30', '06-20', '07-04', '09-05', '10-10', '11-11', '11-24', '12-26'],
  ],
  [
    2023,
    'OPM list for 2023 as printed',
    ['01-02', '01-16', '02-20', '05-29', '06-19', '07-04', '09-04', '10-09', '11-10', '11-23', '12-25'],
  ],
  [
    2024,
    'OPM list for 2024, from memory',
    ['01-01', '01-15', '02-19', '05-27', '06-19', '07-04', '09-02', '10-14', '11-11', '11-28', '12-25'],
  ],
  [
    2025,
    'OPM list for 2025, from memory; the days themselves also in the Federal Reserve’s table',
    ['01-01', '01-20', '02-17', '05-26', '06-19', '07-04', '09-01', '10-13', '11-11', '11-27', '12-25'],
  ],
  [
    2026,
    'OPM list for 2026, from memory; the days themselves also in the Federal Reserve’s table',
    ['01-01', '01-19', '02-16', '05-25', '06-19', '07-03', '09-07', '10-12', '11-11', '11-26', '12-25'],
  ],
  [
    2027,
    'OPM list for 2027, from memory; the days themselves also in the Federal Reserve’s table',
    ['01-01', '01-18', '02-15', '05-31', '06-18', '07-05', '09-06', '10-11', '11-11', '11-25', '12-24'],
  ],
];

describe('the federal holidays as they are kept', () => {
  test.each(OPM)('in %i are those of the published list (%s)', (year, _source, days) => {
    expect(observed(year)).toEqual(inYear(year, days));
  });

  test('of New Year’s Day 2028 fall in 2027, and the calendar of 2027 knows it (5 U.S.C. 6103(b))', () => {
    expect(whyClosed('2027-12-31' as LocalDate, FEDERAL_CALENDAR)).toBe('New Year’s Day');
    expect(observed(2027)).not.toContain('2027-12-31');
    expect(observed(2028)[0]).toBe('2027-12-31');
  });

  test('are those of an independent library for every year from 2021 to 2099 (@18f/us-federal-holidays)', () => {
    for (let year = 2021; year < 2100; year += 1) {
      const theirs = fedHolidays
        .allForYear(year, { shiftSaturdayHolidays: true, shiftSundayHolidays: true })
        .map((day) => day.dateString.replace(/-(\d)\b/g, '-0$1'));
      expect([year, ...observed(year)]).toEqual([year, ...theirs.sort()]);
    }
  });

  test('close exactly the weekdays that the library closes, day by day for ten years', () => {
    const start = Date.UTC(2023, 0, 1);
    for (let day = 0; day < 3652; day += 1) {
      const date = new Date(start + day * 86_400_000).toISOString().slice(0, 10) as LocalDate;
      const weekday = weekdayOf(date);
      if (weekday === 'sat' || weekday === 'sun') continue;
      const theirs = fedHolidays.isAHoliday(new Date(start + day * 86_400_000), {
        utc: true,
        shiftSaturdayHolidays: true,
        shiftSundayHolidays: true,
      });
      expect([date, whyClosed(date, FEDERAL_CALENDAR) !== null]).toEqual([date, theirs]);
    }
  });
});

// Federal Reserve Bank of Richmond, holiday schedule 2025 to 2027: "For holidays falling on Saturday, Federal Reserve
// Banks and Branches will be open the preceding Friday."
test.each(['2026-07-03', '2027-06-18', '2027-12-24', '2027-12-31'])(
  '%s is worked by banks and not by offices',
  (day) => {
    const date = day as LocalDate;
    expect(whyClosed(date, { ...FEDERAL_CALENDAR, holidays: 'bank' })).toBeNull();
    expect(whyClosed(date, FEDERAL_CALENDAR)).not.toBeNull();
  },
);

test('a Sunday’s holiday closes banks on the Monday, as it does offices (Federal Reserve, 2027-07-05)', () => {
  expect(whyClosed('2027-07-05' as LocalDate, { ...FEDERAL_CALENDAR, holidays: 'bank' })).toBe('Independence Day');
});
