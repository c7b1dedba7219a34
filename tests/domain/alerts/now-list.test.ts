import fc from 'fast-check';
import { expect, test } from 'vitest';
import { needsBid } from '../../../src/domain/alerts/alert-lot.ts';
import { nowList } from '../../../src/domain/alerts/now-list.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { HOUR, MINUTE } from '../../../src/domain/time/units.ts';
import { type Invention, inventedLot } from './invented-lots.ts';

const NOW = 1_800_000_000_000;
const DAY_ENDS = NOW + 11.5 * HOUR;
const at = (minutes: number) => NOW + minutes * MINUTE;
const outbid: Invention = {
  bid: { placed: true, loud: true, words: 'Outbid at $8,300.', offer: null, news: null },
};
const ids = (lots: readonly { readonly id: string }[]) => lots.map(({ id }) => id);

test('what wants a hand within the hour comes first, and a bid that was passed is not left to its own hour', () => {
  const lots = [
    inventedLot('placed', at(10), { placed: true }),
    inventedLot('soon', at(15)),
    inventedLot('with', at(15)),
    inventedLot('in the afternoon', at(120)),
    inventedLot('passed', at(110), outbid),
    inventedLot('on Monday', at(3000)),
    inventedLot('passed, on Monday', at(3000), outbid),
    inventedLot('handed over', at(20), { handedTo: 'the buyer' }),
    inventedLot('done', at(11), { done: true }),
    inventedLot('closed', at(-5)),
    inventedLot('closed before', at(-9), { placed: true }),
    inventedLot('answered', at(-6), { ended: true }),
    inventedLot('history', at(-7), { since: instant(at(-1)) }),
    inventedLot('old', at(-2000)),
  ];
  const list = nowList(lots, DAY_ENDS, NOW);
  expect(ids(list.unanswered)).toEqual(['closed', 'closed before']);
  expect(ids(list.hour)).toEqual(['soon', 'with', 'passed', 'placed', 'handed over']);
  expect(ids(list.today)).toEqual(['in the afternoon']);
  expect(ids(list.later)).toEqual(['on Monday', 'passed, on Monday']);
});

test('where nothing closes today, the next few are shown all the same', () => {
  const lots = [1, 2, 3, 4, 5].map((days) => inventedLot(`${days}`, at(days * 1440)));
  const list = nowList(lots, DAY_ENDS, NOW);
  expect({ hour: ids(list.hour), today: ids(list.today), later: ids(list.later) }).toEqual({
    hour: [],
    today: ['1', '2', '3'],
    later: ['4', '5'],
  });
});

test('no open lot is shown twice or lost, and none that is done with comes before one that wants a hand', () => {
  const lot = fc.record({ minutes: fc.integer({ min: 1, max: 6000 }), placed: fc.boolean(), passed: fc.boolean() });
  fc.assert(
    fc.property(fc.array(lot, { maxLength: 80 }), (made) => {
      const lots = made.map(({ minutes, placed, passed }, i) =>
        inventedLot(`${i}`, at(minutes), passed ? outbid : { placed }),
      );
      const { hour, today, later } = nowList(lots, DAY_ENDS, NOW);
      expect(ids([...hour, ...today, ...later]).sort()).toEqual(ids(lots).sort());
      expect(hour.map(needsBid)).toEqual(hour.map(needsBid).sort((a, b) => Number(b) - Number(a)));
    }),
  );
});
