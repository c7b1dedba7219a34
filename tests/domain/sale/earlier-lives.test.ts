import { expect, test } from 'vitest';
import { earlierLives, laterLives } from '../../../src/domain/sale/earlier-lives.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';

const VIN = '0EXAMPLE000000001';

function life(id: string, closeDay: number | null, addedDay = 0, vin: string | undefined = VIN) {
  const close =
    closeDay === null
      ? undefined
      : closeTimeSchema.parse({
          instant: closeDay * DAY,
          text: 'as printed',
          zone: 'America/Boise',
          how: 'stated-zone',
          doubts: [],
          otherwise: [],
        });
  return { id, facts: { ...(vin && { vin }), ...(close && { close }) }, addedAt: instant(addedDay * DAY) };
}

test('earlier lives come latest first, later ones soonest first, by their close', () => {
  const all = [life('may', 150), life('march', 80), life('june', 170), life('april', 110)];
  const april = life('april', 110);
  expect(earlierLives(april, all).map(({ id }) => id)).toEqual(['march']);
  expect(earlierLives(life('july', 200), all).map(({ id }) => id)).toEqual(['june', 'may', 'april', 'march']);
  expect(laterLives(april, all).map(({ id }) => id)).toEqual(['may', 'june']);
});

test('where a close is not known, the moment it came in decides', () => {
  expect(earlierLives(life('now', 100), [life('then', null, 90)])).toHaveLength(1);
  expect(earlierLives(life('now', 100), [life('then', null, 101)])).toHaveLength(0);
});

test('the lot itself, the same close twice, other cars and cars without a VIN are no earlier lives', () => {
  const lot = life('a', 100);
  expect(earlierLives(lot, [lot, life('b', 100), life('c', 50, 0, '0EXAMPLE000000002')])).toEqual([]);
  expect(earlierLives(life('a', 100, 0, ''), [life('b', 50, 0, '')])).toEqual([]);
});
