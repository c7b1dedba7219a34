import { describe, expect, test } from 'vitest';
import { closingOrder } from '../../../src/domain/plan/closing-order.ts';
import { lotOf, minutes, NOW, purseOf } from './made-up.ts';

const idsOf = (lists: readonly (readonly { readonly id: string }[])[]) => lists.map((list) => list.map(({ id }) => id));

describe('the order of the closes', () => {
  test('puts lots that close within the reaction time of the one before into one batch', () => {
    const lots = [lotOf('c', 20), lotOf('a', 10), lotOf('b', 13), lotOf('d', 23.1)];
    expect(idsOf(closingOrder(lots, purseOf(1), NOW).batches)).toEqual([['a', 'b'], ['c'], ['d']]);
  });

  test('keeps closes at one moment together even for somebody who reacts at once', () => {
    const lots = [lotOf('a', 10), lotOf('b', 10), lotOf('c', 11)];
    expect(idsOf(closingOrder(lots, purseOf(1, { reaction: 0 }), NOW).batches)).toEqual([['a', 'b'], ['c']]);
  });

  test('leaves out what has closed and what closes after the purse ends, and says which has no close', () => {
    const lots = [lotOf('a', 10), lotOf('gone', 0), lotOf('next', 99), lotOf('none', null)];
    const order = closingOrder(lots, purseOf(1, { until: minutes(60) }), NOW);
    expect(idsOf([...order.batches, order.closed, order.afterPurse, order.noClose])).toEqual([
      ['a'],
      ['gone'],
      ['next'],
      ['none'],
    ]);
    expect(order.faults).toEqual([
      {
        about: 'close',
        lotId: 'none',
        sentence: 'Lot none has no close, so it has no place in the plan. Enter when it closes.',
      },
    ]);
  });

  test('says so when a close moved behind another, and only then', () => {
    const faultsOf = (closesAt: number) =>
      closingOrder([lotOf('a', closesAt, { closeBefore: minutes(10) }), lotOf('b', 20)], purseOf(1), NOW).faults;
    expect(faultsOf(15)).toEqual([]);
    expect(faultsOf(30).map(({ sentence }) => sentence)).toEqual([
      'Lot a now closes after Lot b. The plan follows the new order: check the proxies that are in.',
    ]);
  });
});
