import { expect, test } from 'vitest';
import { dutyNow, lotsForNext } from '../../../options-page/now/duty-now.ts';
import { rushCalendar } from '../../../src/domain/rush/rush-bands.ts';
import { rushSchema } from '../../../src/domain/setup/store.ts';
import { BOISE, clockAt, inventedLot } from '../../domain/alerts/invented-lots.ts';

const at = (time: string) => clockAt('2026-11-28', time);
const calendar = rushCalendar(
  rushSchema.parse({
    weekly: [
      { weekday: 'sat', from: '10:00', to: '12:00', who: 'the manager' },
      { weekday: 'sat', from: '12:00', to: '17:00', who: 'the salesperson' },
    ],
  }),
  BOISE,
  30,
);

test('before noon the manager is on duty and the salesperson is next; afterwards nobody is', () => {
  const names = (time: string) => {
    const duty = dutyNow(calendar, BOISE, at(time));
    return duty && [duty.current?.who, duty.next?.who];
  };
  expect(names('09:00')).toEqual([undefined, 'the manager']);
  expect(names('11:50')).toEqual(['the manager', 'the salesperson']);
  expect(names('12:00')).toEqual(['the salesperson', undefined]);
  expect(names('17:00')).toBeNull();
});

test('the next one takes over what is open and closes until the end of his hours, and nothing else', () => {
  const now = at('11:50');
  const lots = [
    inventedLot('soon', at('11:55')),
    inventedLot('his', at('16:50')),
    inventedLot('after', at('17:10')),
    inventedLot('closed', at('11:40')),
    inventedLot('done', at('13:00'), { done: true }),
    inventedLot('has-it', at('13:00'), { handedTo: 'the salesperson' }),
    inventedLot('another', at('13:00'), { handedTo: 'the lot attendant' }),
  ];
  const next = dutyNow(calendar, BOISE, now)?.next;
  if (next == null) throw new Error('nobody is next');
  expect(lotsForNext(lots, next, now).map(({ id }) => id)).toEqual(['soon', 'his', 'another']);
});
