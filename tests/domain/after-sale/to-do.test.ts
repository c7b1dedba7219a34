import { describe, expect, test } from 'vitest';
import { bySoonest, toDosOf } from '../../../src/domain/after-sale/to-do.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { dispute, FEES, NO_RULES, PLACE, phoenix, wonLot } from './sold-lot.ts';

const toDo = (more: Parameters<typeof wonLot>[0], place = PLACE) =>
  toDosOf(wonLot(more), FEES, place)
    .toSorted(bySoonest)
    .map(({ key, due }) => [key, due.as === 'at' ? due.at : due.as]);

describe('what is left to do about a won lot', () => {
  test('stands in the order of its dates: first what has one, counted by the venue’s rules', () => {
    expect(toDo({})).toEqual([
      // Two business days from Tuesday, Thanksgiving not counted: Friday, 5 PM.
      ['pay', phoenix('2026-11-27T17:00')],
      ['title', phoenix('2026-12-24T17:00')],
      ['transport', 'no-rule'],
      ['deliver', 'no-rule'],
      ['inspect', 'waits'],
      ['fund', 'no-rule'],
    ]);
  });

  test('begins to count from delivery when it was delivered, and calls the last moment for a defect until it was inspected', () => {
    const steps = { deliver: [{ at: phoenix('2026-12-01T15:00') }] };
    expect(toDo({ steps }).slice(1, 3)).toEqual([
      ['inspect', phoenix('2026-12-02T17:00')],
      ['look-over', phoenix('2026-12-08T17:00')],
    ]);
    const inspected = { ...steps, inspect: [{ at: phoenix('2026-12-02T10:00') }] };
    expect(toDo({ steps: inspected }).map(([key]) => key)).not.toContain('look-over');
  });

  test('still has the payment while a part of it is open, with what is left', () => {
    const steps = { pay: [{ at: phoenix('2026-11-25T09:00'), cents: cents(1_000_000) }] };
    expect(toDosOf(wonLot({ steps }), FEES, PLACE)[0]).toMatchObject({ key: 'pay', cents: 282_400 });
  });

  test('is only the money once the sale is undone', () => {
    const steps = { pay: [{ at: phoenix('2026-11-25T09:00') }] };
    const outcome = { ended: 'sale-undone' as const, at: phoenix('2026-12-09T12:00') };
    expect(toDosOf(wonLot({ steps, disputes: [dispute({ outcome })] }), FEES, PLACE)).toMatchObject([
      { key: 'refund', cents: 1_282_400 },
    ]);
  });

  test('is every step without a date where no rule is known', () => {
    expect(toDo({}, NO_RULES).every(([, due]) => due === 'no-rule')).toBe(true);
  });
});

describe('what is left to do in a dispute', () => {
  const delivered = { deliver: [{ at: phoenix('2026-12-01T15:00') }] };
  const of = (given: Parameters<typeof dispute>[0], more: Parameters<typeof wonLot>[0] = { steps: delivered }) =>
    toDosOf(wonLot({ ...more, disputes: [dispute(given)] }), FEES, PLACE)
      .filter(({ kind }) => kind === 'dispute')
      .map(({ what, due, needs }) => [what, due.as === 'at' ? due.at : due.as, needs?.length]);

  test('is to bring our claim up before the venue’s time for it ends', () => {
    expect(of({})).toEqual([['File the claim with the venue', phoenix('2026-12-08T17:00'), 2]]);
    expect(of({}, {})).toEqual([['File the claim with the venue', 'waits', 2]]);
  });

  test('is to answer another’s within so many hours of his notice', () => {
    expect(of({ side: 'theirs' })).toEqual([['Answer the claim', phoenix('2026-12-04T09:00'), 2]]);
  });

  test('goes by the venue’s word in this case rather than by its rule, and by the date set for the next thing', () => {
    const dueAt = phoenix('2026-12-10T12:00');
    const next = { what: 'Take it to the venue’s shop', at: phoenix('2026-12-09T12:00') };
    expect(of({ dueAt, next })).toEqual([
      ['File the claim with the venue', dueAt, 2],
      ['Take it to the venue’s shop', next.at, 2],
    ]);
  });

  test('is no longer the claim once the venue was told, and then to bring it to an end', () => {
    const told = { what: 'told' as const, at: phoenix('2026-12-03T09:00') };
    const got = { what: 'got' as const, need: 'Bill of sale', at: phoenix('2026-12-03T09:30') };
    expect(of({ steps: [told, got] })).toEqual([['Settle the dispute', 'no-rule', 1]]);
    expect(of({ side: 'theirs', steps: [told] })).toHaveLength(1);
  });

  test('is nothing once it has ended', () => {
    expect(of({ outcome: { ended: 'dropped', at: phoenix('2026-12-09T12:00') } })).toEqual([]);
  });
});
