import { expect, test } from 'vitest';

test('the zone this run is told to be in is the one in force', () => {
  const told = process.env.TZ ?? 'none, but the configuration beside this names one';
  expect(new Intl.DateTimeFormat('en-US').resolvedOptions().timeZone).toBe(told);
  expect(new Date(2026, 6, 1).getTime()).toBe(midnightOfJulyFirst(told));
});

/** What the local midnight of 1 July 2026 is in UTC, by the offset Intl names for that zone. */
function midnightOfJulyFirst(zone: string): number {
  const noon = new Date(Date.UTC(2026, 6, 1, 12));
  const parts = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' }).formatToParts(noon);
  const [, sign = '+', hours = '0', minutes = '0'] =
    /GMT(?:([+-])(\d+):(\d+))?/.exec(parts.find((part) => part.type === 'timeZoneName')?.value ?? '') ?? [];
  const offset = (Number(hours) * 60 + Number(minutes)) * 60_000 * (sign === '-' ? -1 : 1);
  return Date.UTC(2026, 6, 1) - offset;
}
