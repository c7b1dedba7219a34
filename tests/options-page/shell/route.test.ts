import { expect, test } from 'vitest';
import { readRoute } from '../../../options-page/shell/route.ts';

test.each([
  ['', 'lots'],
  ['#/lots', 'lots'],
  ['#/lot/x', 'lot'],
  ['#/history/x', 'history'],
  ['#/life/x', 'history'],
  ['#/results', 'results'],
  ['#/results/missing', 'results'],
  ['#/week', 'week'],
  ['#/now', 'now'],
  ['#/now/x', 'now'],
  ['#/add', 'add'],
  ['#/setup/fees', 'setup'],
  ['#/backup', 'backup'],
  ['#/todo', 'todo'],
  ['#/won/x', 'won'],
  ['#/disputes', 'disputes'],
  ['#/dispute/x', 'dispute'],
  ['#/open-dispute/x', 'open-dispute'],
  ['#/books/review', 'books'],
  ['#/words/max-bid', 'words'],
  ['#/nothing', 'unknown'],
])('the address %s opens the screen %s', (hash, screen) => {
  expect(readRoute(hash).screen).toBe(screen);
});

test('the part of a screen is read with it', () => {
  expect(readRoute('#/results/missing')).toEqual({ screen: 'results', part: 'missing' });
  expect(readRoute('#/setup/fees')).toEqual({ screen: 'setup', part: 'fees' });
});
