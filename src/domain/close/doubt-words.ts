import type { CloseDoubt, CloseTime } from '../time/close-time.ts';

const SENTENCES: Record<CloseDoubt, string> = {
  gap: 'That night the clocks go forward and this time does not exist.',
  overlap: 'That night the clocks go back and this time comes twice.',
  abbreviation: 'The zone letters do not fit the date or the venue.',
  'no-zone': 'Nothing says which zone this is in; the store’s was taken.',
  'zone-data':
    'This zone changed its clock rules lately and this browser does not know it yet, so it may be an hour off. Update the browser and the system, or type the time with its offset, such as 2:00 PM -07:00.',
  'half-day': 'Nothing says whether it is AM or PM.',
  midnight: 'Midnight can begin or end that day, or the time was left out.',
  'day-order': 'The figures can be month and day, or day and month.',
  'which-day': 'It can mean more than one day.',
  weekday: 'The weekday does not fit the date.',
  range: 'More than one time or day is written.',
  'two-clocks': 'Two times are written, and they are not the same moment.',
  countdown: 'It can be time left or a time of day, in hours or in minutes.',
  approximate: 'It says that it is only about then.',
  'closed-ahead': 'It says that it has closed, and the time is still to come.',
  spelling: 'A word in it is misspelled.',
};

/** Why a close deserves a second look, in sentences; empty where nothing is in doubt. */
export const wordsOfDoubt = ({ doubts }: Pick<CloseTime, 'doubts'>): string =>
  doubts.map((doubt) => SENTENCES[doubt]).join(' ');
