import { describe, expect, test } from 'vitest';
import type { AlertLot, BidNews } from '../../../src/domain/alerts/alert-lot.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { bareRules, clockAt, inventedLot, planFor } from './invented-lots.ts';

const CLOSE = clockAt('2026-11-28', '12:00');
const news: BidNews = {
  key: 'a outbid 900000 1',
  since: CLOSE - 600 * MINUTE,
  title: 'outbid at $10,600',
  body: 'There is room left: raise it or stop.',
};
const lot = (more: Partial<AlertLot> = {}): AlertLot =>
  inventedLot('a', CLOSE, {
    bid: { placed: true, loud: true, words: 'Outbid at $10,600.', offer: null, news },
    ...more,
  });
const at = (minutesBefore: number) => CLOSE - minutesBefore * MINUTE;

test('lots that closed in the same minute are one question without a button, and each alone is one with it', () => {
  const closed = (id: string, minutes: number) => inventedLot(id, CLOSE + minutes * MINUTE, { placed: true });
  const rules = bareRules({ afterCloseMinutes: 5, reactionMinutes: 3 });
  const three = [closed('a', 0), closed('b', 0), closed('c', 1)];
  const shown = three.map(({ id, close }) => `${id} 5 ${close}`);
  // Nobody has time for it in the busy hours.
  expect(planFor(three, CLOSE + 6 * MINUTE, { rules, shown })).toEqual({ due: [], next: CLOSE + 60 * MINUTE });
  const { due } = planFor(three, CLOSE + 60 * MINUTE, { rules, shown });
  expect(due.map(({ title, offers, route }) => ({ title, offers, route }))).toEqual([
    { title: '3 lots closed from 12:00 PM to 12:01 PM: how did they end?', offers: [], route: '#/now' },
  ]);
  const [one] = planFor([closed('a', 0)], CLOSE + 60 * MINUTE, { rules, shown }).due;
  expect(one?.offers.map(({ do: what }) => what)).toEqual(['lost', 'extended']);
});

describe('what came up about a bid that is in', () => {
  test('is said at once and softly long before the first call, and is never called late', () => {
    const { due, next } = planFor([lot()], at(500));
    expect(due.map(({ title, loudness, keys }) => ({ title, loudness, keys }))).toEqual([
      { title: 'Car a: outbid at $10,600', loudness: 'quiet', keys: [news.key] },
    ]);
    expect(due[0]?.body).toBe('Stop at $9,725. There is room left: raise it or stop. Closes Sat Nov 28, 12:00 PM.');
    expect(next).toBe(at(60));
  });

  test('is said once, and leaves the calls before the close as they were, as loud as for a lot without a proxy', () => {
    expect(planFor([lot()], at(500), { shown: [news.key] }).due).toEqual([]);
    const { due } = planFor([lot()], at(60), { shown: [news.key] });
    expect(due.map(({ title, loudness, body }) => ({ title, loudness, body }))).toEqual([
      {
        title: 'Car a closes in 1 h',
        loudness: 'quiet',
        body: 'Stop at $9,725. Outbid at $10,600. Closes Sat Nov 28, 12:00 PM.',
      },
    ]);
  });

  test('is loud where no call follows, and where money is at risk until somebody acts', () => {
    const urgent = lot({ bid: { ...lot().bid, news: { ...news, urgent: true } } });
    expect(planFor([urgent], at(500)).due).toMatchObject([{ loudness: 'loud', about: 'lot-a' }]);
    expect(planFor([lot()], at(14)).due).toMatchObject([{ loudness: 'loud', about: 'lot-a' }]);
    expect(planFor([lot({ ownLeads: [] })], at(500)).due).toMatchObject([{ loudness: 'loud' }]);
  });

  test('that nothing is to be done is said once, softly, and only within half a day of the close', () => {
    const calm = lot({
      bid: { ...lot().bid, loud: false, news: { ...news, body: 'Nothing is to be done.', calm: true } },
    });
    expect(planFor([calm], at(13 * 60)).due).toEqual([]);
    expect(planFor([calm], at(500)).due).toMatchObject([{ loudness: 'quiet', about: 'soon-a' }]);
    expect(planFor([{ ...calm, done: true }], at(500)).due).toEqual([]);
  });

  test('takes the place of a call that is due in the same moment, so that there is one notice', () => {
    const { due } = planFor([lot()], at(60));
    expect(due.map(({ keys }) => keys)).toEqual([[news.key, `a 60 ${CLOSE}`]]);
    expect(planFor([lot()], at(59), { shown: due.flatMap(({ keys }) => keys) }).due).toEqual([]);
  });

  test('is said of a lot that its user is done with as well, and of none whose result is known or that has closed', () => {
    expect(planFor([lot({ done: true })], at(500)).due).toHaveLength(1);
    expect(planFor([lot({ ended: true })], at(500)).due).toEqual([]);
    expect(planFor([lot()], at(-1)).due.flatMap(({ keys }) => keys)).not.toContain(news.key);
  });
});
