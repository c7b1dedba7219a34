import { expect, test } from 'vitest';
import { madeUpRow } from '../../src/demo/made-up-row.ts';
import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import { addDays } from '../../src/domain/time/calendar-day.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { LocalDate } from '../../src/domain/time/local-date.ts';
import { DAY } from '../../src/domain/time/units.ts';
import { zone } from '../../src/domain/time/zone.ts';

test('the made-up row closes on a Saturday within the next eight days, on whatever day of the year it is tried', () => {
  const boise = zone('America/Boise');
  for (let i = 0, today = '2027-01-01' as LocalDate; i < 366; i++, today = addDays(today, 1)) {
    const [head = '', row = ''] = madeUpRow(today)
      .split('\n')
      .map((line) => line.split('\t'));
    const text = row[head.indexOf('Closes')] ?? '';
    // The last minute of the day, when least is left.
    const now = instant(Date.parse(`${addDays(today, 1)}T06:59Z`));
    const close = readCloseTime(text, { now, storeZone: boise });
    if (!close.ok) throw new Error(`${today}: ${close.message}`);
    expect(text, today).toMatch(/^Sat /);
    expect(close.value.instant - now, today).toBeGreaterThan(0);
    expect(close.value.instant - now, today).toBeLessThan(8 * DAY);
  }
});
