import { expect, test } from 'vitest';
import { editionDates, editionState, holdingEdition } from '../../../options-page/setup/fees/edition-words.ts';
import { feeEditionSchema } from '../../../src/domain/fees/fee-schedule.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';

const today = '2026-11-25' as LocalDate;
const edition = (dates: object) => feeEditionSchema.parse({ tables: [], ...dates });
const old = edition({ validTo: '2026-10-31' });
const present = edition({ validFrom: '2026-11-01', validTo: '2026-11-25' });
const coming = edition({ validFrom: '2026-11-26' });

test('a price list says when it holds and how that stands to today, both end days included', () => {
  expect([old, present, coming, edition({})].map(editionDates)).toEqual([
    'until Oct 31, 2026',
    'Nov 1, 2026 to Nov 25, 2026',
    'from Nov 26, 2026',
    'at all times',
  ]);
  expect([old, present, coming].map((each) => editionState(each, today))).toEqual(['over', 'now', 'later']);
});

test('the list that holds today is opened first, and without one the last', () => {
  expect(holdingEdition([old, present, coming], today)).toBe(1);
  expect(holdingEdition([old, coming], today)).toBe(1);
});
