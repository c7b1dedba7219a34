import { expect, test } from 'vitest';
import { instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import type { Need } from '../../../src/domain/week/closing-need.ts';
import type { Closing } from '../../../src/views/week/closing.ts';
import { dayGroups, type Edge } from '../../../src/views/week/day-groups.ts';

// Only its id, its close and what it needs are looked at.
const closing = (id: string, minute: number, need: Need = 'bare') =>
  ({ id, close: instant(minute * MINUTE), need }) as Closing;
const edge = (words: string, minute: number): Edge => ({ at: instant(minute * MINUTE), words, kind: 'rush' });

const shape = (groups: ReturnType<typeof dayGroups>) =>
  groups.map(({ colliding, items }) => [
    colliding,
    items.map((item) => (item.kind === 'edge' ? item.edge.words : item.closing.id)).join(' '),
  ]);

test('what collides is one group, and lines stand where they fall, even inside one', () => {
  const closings = [closing('a', 10), closing('b', 20), closing('c', 22), closing('d', 60)];
  const edges = [edge('ends', 40), edge('begins', 21)];
  expect(shape(dayGroups(closings, edges, 3))).toEqual([
    [0, 'a'],
    [2, 'b begins c'],
    [0, 'ends'],
    [0, 'd'],
  ]);
});

test('a line at a close stands above it, and one after the last stands at the end', () => {
  expect(shape(dayGroups([closing('a', 10)], [edge('begins', 10), edge('ends', 90)], 3))).toEqual([
    [0, 'begins'],
    [0, 'a'],
    [0, 'ends'],
  ]);
});

test('what has closed collides with nothing any more, even where it stands between two that do', () => {
  const closings = [
    closing('a', 10, 'unsaid'),
    closing('b', 11, 'over'),
    closing('c', 12),
    closing('d', 13, 'over'),
    closing('e', 14),
    closing('f', 15, 'over'),
  ];
  const groups = dayGroups(closings, [], 3);
  expect(shape(groups)).toEqual([
    [0, 'a'],
    [0, 'b'],
    [2, 'c d e'],
    [0, 'f'],
  ]);
  expect(groups.map((group) => group.closings)).toEqual([1, 1, 3, 1]);
});
