import type { ColumnField } from './column-field.ts';

/** What columns can say of a lot's close. */
export const CLOSE_FIELDS = [
  {
    id: 'closes',
    label: 'Closes',
    words:
      'close; closing; ends; end; ending; closes at; ends at; closes on; close date time; closing date time; end date time; end time date; date time; close at; bidding ends; bidding closes; auction ends; auction end; close ts; closes ts; end ts; ends ts; close timestamp; end timestamp; clôture; fin',
    how: 'Date and time, with a zone if it has one; otherwise the venue’s zone is used, then the store’s.',
    example: '11/28/2026 2:05 PM ET',
    fills: ['close'],
  },
  {
    id: 'closeDate',
    label: 'Close date',
    words:
      'closing date; end date; date; sale date; auction date; ends on; date closes; date of sale; date de clôture; date de fin',
    how: 'A date; the time has its own column.',
    example: '11/28/2026',
    fills: ['close'],
  },
  {
    id: 'closeTime',
    label: 'Close time',
    words: 'closing time; end time; time; sale time; auction time; start of close; time closes',
    how: 'A time of day; the date has its own column.',
    example: '2:05 PM',
    fills: ['close'],
  },
  {
    id: 'timeLeft',
    label: 'Time left',
    words:
      'ends in; closes in; closing in; ending in; time remaining; remaining; countdown; days left; hours left; minutes left; mins left; minutes remaining; hours remaining; days remaining',
    how: 'How long until it closes, counted from the moment the file is read.',
    example: '2d 4h',
    fills: ['close'],
  },
  {
    id: 'zone',
    label: 'Zone',
    words: 'time zone; timezone; tz; zone name; close zone',
    how: 'The zone of the close, such as America/New_York, or letters such as ET.',
    example: 'America/New_York',
    fills: ['close'],
  },
  {
    id: 'closesUtc',
    label: 'Closes (UTC)',
    words: 'close utc; ends utc; utc; close time utc; end time utc; closing time utc',
    how: 'The same moment in UTC; it settles a close that could mean two.',
    example: '2026-11-28T19:05:00Z',
    fills: ['close'],
  },
] as const satisfies readonly ColumnField[];
