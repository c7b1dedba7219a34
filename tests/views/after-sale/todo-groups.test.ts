import { expect, test } from 'vitest';
import type { Due } from '../../../src/domain/after-sale/due.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { groupsByDate, type ToDoItem } from '../../../src/views/after-sale/todo-groups.ts';

const BOISE = zone('America/Boise');
const at = (text: string) => instant(Date.parse(`${text}-07:00`));
// The groups look at nothing of an item but its date.
const item = (due: Due) => ({ due }) as ToDoItem;
const NOW = at('2026-11-25T14:00');

test('what is to do is grouped by the store’s own days, and groups without anything are left out', () => {
  const dues = [
    ['2026-11-25T13:59', 'Overdue'],
    ['2026-11-25T14:00', 'Today'],
    ['2026-11-25T23:59', 'Today'],
    ['2026-11-26T00:00', 'Tomorrow'],
    ['2026-11-27T00:00', 'Within a week'],
    ['2026-12-02T23:59', 'Within a week'],
    ['2026-12-03T00:00', 'Later'],
  ] as const;
  for (const [when, title] of dues)
    expect([when, groupsByDate([item({ as: 'at', at: at(when) })], NOW, BOISE).map((group) => group.title)]).toEqual([
      when,
      [title],
    ]);
});

test('what has no date comes last and folded', () => {
  const groups = groupsByDate([item({ as: 'no-rule' }), item({ as: 'at', at: NOW })], NOW, BOISE);
  expect(groups.map(({ title, folded }) => [title, folded])).toEqual([
    ['Today', false],
    ['No date', true],
  ]);
});
