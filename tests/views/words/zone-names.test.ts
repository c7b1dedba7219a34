import { describe, expect, test } from 'vitest';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { clockDifference, clockIn } from '../../../src/views/words/zone-clock.ts';
import { readZone, zoneNames } from '../../../src/views/words/zone-names.ts';

const read = (text: string) => {
  const outcome = readZone(text);
  return outcome.ok ? outcome.value : outcome.message;
};

describe('a zone that is typed', () => {
  test('is found by its full name and by the place in it, in any case', () => {
    expect(read('America/Phoenix')).toBe('America/Phoenix');
    expect(read('america/denver')).toBe('America/Denver');
    expect(read('phoenix')).toBe('America/Phoenix');
    expect(read('new york')).toBe('America/New_York');
    expect(read('utc')).toBe('UTC');
  });

  test('keeps an older name that still holds', () => {
    expect(read('US/Mountain')).toBe('US/Mountain');
  });

  test('by letters or by the name of several is refused, never guessed', () => {
    expect(read('MST')).toMatch(/not a zone/);
    expect(read('Mountain Time')).toMatch(/Several zones go by that name: America\/Denver/);
    expect(read('Nowhere/Else')).toMatch(/not a zone/);
  });
});

test('the zones of the four mainland clocks and Arizona stand first', () => {
  expect(
    zoneNames()
      .slice(0, 5)
      .map((each) => each.zone),
  ).toEqual(['America/New_York', 'America/Chicago', 'America/Denver', 'America/Phoenix', 'America/Los_Angeles']);
});

test('a clock elsewhere is told with its difference at that very moment, daylight saving included', () => {
  const winter = instant(Date.UTC(2026, 11, 2, 17, 14));
  const summer = instant(Date.UTC(2026, 6, 1, 16, 14));
  expect(clockIn(zone('America/Denver'), winter)).toBe('Wed 10:14 AM');
  expect(clockDifference(zone('America/Phoenix'), zone('America/Boise'), winter)).toBe('the same as');
  expect(clockDifference(zone('America/Phoenix'), zone('America/Boise'), summer)).toBe('1 hour behind');
  expect(clockDifference(zone('America/New_York'), zone('America/Boise'), summer)).toBe('2 hours ahead of');
  expect(clockDifference(zone('America/St_Johns'), zone('America/Boise'), winter)).toBe('3 hours 30 minutes ahead of');
});
