import { expect, test } from 'vitest';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { wholeSetup } from '../../src/domain/setup/starting-setup.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';
import { calendarFile } from '../../src/ui/calendar/calendar-file.ts';
import { readCalendar } from '../domain/calendar/read-calendar.ts';
import { value } from '../store/open-test-store.ts';
import { BOISE } from './invented-saturday.ts';
import { dollars, MIDNIGHT, Saturday } from './saturdays/saturday.ts';
import { written } from './saturdays/script.ts';

const FRIDAY_AT_SIX = Date.parse('2026-12-05T01:00:00Z');
const HALF_PAST_FIVE = Date.parse('2026-12-06T00:30:00Z');
/** Written by somebody who had not read the code: no bid yet, or a proxy below the max bid; nobody will see prices there. */
const RING = { '102': 11_200, '105': 7_900, '109': 14_300, '110': 6_200, '114': 11_500, '118': 9_300 } as const;
const MAY_RING = [...Object.keys(RING), '115', '116'];

test('with the computer off all Saturday the phone rings from the calendar file, and one evening gathers the day', async () => {
  const lots = written.lotSets.twenty ?? [];
  const saturday = await Saturday.begin(lots, () => undefined);
  const { browser } = saturday;
  await browser.run(FRIDAY_AT_SIX);
  const store = await browser.store();
  const setup = wholeSetup(await store.setup(), BOISE);
  const choice = { from: instant(MIDNIGHT), before: instant(MIDNIGHT + DAY) };
  const events = readCalendar(await value(await calendarFile(store, setup, choice)).blob.text());
  store.close();
  expect(events.map(({ at }) => at)).toEqual(lots.map(({ close }) => Date.parse(close)).sort((a, b) => a - b));
  const rings = events.flatMap(({ at, alarms }) =>
    alarms.map(([seconds, words]) => ({ before: -seconds, words, at, lot: /Hauler (\d+)/.exec(words)?.[1] ?? '' })),
  );
  expect(rings.filter(({ lot }) => !MAY_RING.includes(lot)).map(({ lot }) => lot)).toEqual([]);
  expect(rings.length).toBeLessThanOrEqual(9);
  for (const [lot, stop] of Object.entries(RING)) {
    const own = rings.filter((ring) => ring.lot === lot);
    expect(own, `lot ${lot}`).toHaveLength(1);
    expect(own[0]?.before).toBeGreaterThanOrEqual(600);
    expect(own[0]?.words).toContain(formatMoney(dollars(stop)));
    expect(own[0]?.words).toContain('As of Fri Dec 4');
  }

  const from = browser.appeared.length;
  await browser.closedUntil(HALF_PAST_FIVE, true);
  const evening = browser.appeared.slice(from).map(({ notice }) => notice);
  expect(evening.length).toBeLessThanOrEqual(2);
  expect(evening.filter(({ loudness }) => loudness === 'loud').length).toBeLessThanOrEqual(1);
  expect(evening[0]?.title).toMatch(/^Late by /);
});
