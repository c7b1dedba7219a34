import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ToDo } from '../../../src/domain/after-sale/to-do.ts';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { nextLotId } from '../../../src/journal/sortable-id.ts';
import { screenCounts } from '../../../src/views/counts/screen-counts.ts';

const NOW = instant(Date.parse('2026-11-30T15:00:00Z'));
const HOUR = 3_600_000;
const ENTRY = '01J00000000000000000000000' as EntryId;
const noted = { entry: ENTRY, notedAt: NOW, author: 'buyer' };

/** A lot that closes so many hours from now, with or without a result. */
function lot(closesIn: number, result?: Result): LotState {
  const close = { instant: NOW + closesIn * HOUR, text: '', zone: 'UTC', how: 'picked', doubts: [], otherwise: [] };
  return {
    id: nextLotId(instant(0), null, new Uint8Array(8)),
    facts: lotFactsSchema.parse({ make: 'Larkspur', close }),
    evidence: {},
    source: 'typed',
    dropped: false,
    bornIn: ENTRY,
    addedAt: NOW,
    changedAt: NOW,
    sale: { bids: [], ...(result && { result: { result, at: NOW, ...noted } }) },
  };
}

/** A thing to do so many hours from now, or without a date. */
const toDo = (dueIn: number | null): ToDo => ({
  key: 'pay',
  kind: 'step',
  what: 'Pay',
  due: dueIn === null ? { as: 'no-rule' } : { as: 'at', at: instant(NOW + dueIn * HOUR) },
});

test('where nothing waits nothing is shown', () => {
  expect(screenCounts([], [], [], NOW)).toEqual({});
  expect(screenCounts([lot(1), lot(-1, { ended: 'lost' })], [{ toDos: [] }], [], NOW)).toEqual({});
});

test('a lot that closed without a result counts, and so does one that waits for the seller', () => {
  const lots = [lot(-1), lot(-30), lot(-2, { ended: 'pending' }), lot(-3, { ended: 'lost' }), lot(2)];
  expect(screenCounts(lots, [], [], NOW)).toEqual({
    results: { count: 3, figure: '3', words: '3 without a result', presses: false },
  });
});

test('what is to be done counts with or without a date, and what is overdue is said and marked', () => {
  const marked = (dues: readonly (number | null)[]) =>
    screenCounts([], [{ toDos: dues.map(toDo) }, { toDos: [] }], [], NOW).todo;
  expect(marked([5, null])).toEqual({ count: 2, figure: '2', words: '2 open', presses: false });
  expect(marked([5, -1, null])).toEqual({ count: 3, figure: '3!', words: '3 open, 1 overdue', presses: true });
  // Due this very moment is not late yet, as on the screen itself.
  expect(marked([0])).toEqual({ count: 1, figure: '1', words: '1 open', presses: false });
});

test('more than 99 are shown as such and said in full', () => {
  const many = (count: number) => [{ toDos: Array.from({ length: count }, () => toDo(-1)) }];
  expect(screenCounts([], many(99), [], NOW).todo?.figure).toBe('99!');
  expect(screenCounts([], many(1200), [], NOW).todo).toEqual({
    count: 1_200,
    figure: '99+!',
    words: '1,200 open, 1,200 overdue',
    presses: true,
  });
});

test('however much waits, the figure has at most four characters', () => {
  fc.assert(
    fc.property(fc.array(fc.option(fc.integer({ min: -50, max: 50 })), { maxLength: 300 }), (dues) => {
      const { todo } = screenCounts([], [{ toDos: dues.map(toDo) }], [], NOW);
      expect(todo === undefined).toBe(dues.length === 0);
      if (todo !== undefined) expect(todo.figure.length).toBeLessThanOrEqual(4);
    }),
  );
});

test('the lines of the Monday list count for the books, and press where one of them is overdue', () => {
  const line = { key: '', what: '', more: '', hash: '', late: false };
  const group = (lines: readonly (typeof line)[]) => ({ title: '', none: '', lines });
  expect(screenCounts([], [], [group([]), group([])], NOW)).toEqual({});
  expect(screenCounts([], [], [group([line]), group([line, line])], NOW).books).toEqual({
    count: 3,
    figure: '3',
    words: '3 to settle',
    presses: false,
  });
  expect(screenCounts([], [], [group([{ ...line, late: true }])], NOW).books?.figure).toBe('1!');
});
