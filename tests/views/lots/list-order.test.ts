import { describe, expect, test } from 'vitest';
import { columnOf } from '../../../options-page/lots/columns.tsx';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { HOUR } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { bidsUnder } from '../../../src/views/lots/bids.ts';
import { type ListView, orderLots } from '../../../src/views/lots/list-order.ts';
import type { Standing } from '../../../src/views/lots/standing.ts';

const NOW = instant(1_800_000_000_000);

function lot(id: string, facts: LotFacts, closesInHours?: number): LotState {
  const close =
    closesInHours === undefined
      ? {}
      : {
          close: {
            instant: instant(NOW + closesInHours * HOUR),
            text: '',
            zone: zone('America/Boise'),
            how: 'stated-zone' as const,
            doubts: [],
            otherwise: [],
          },
        };
  return {
    id: id as LotId,
    facts: { ...facts, ...close },
    evidence: {},
    source: 'typed',
    addedAt: NOW,
    changedAt: NOW,
    dropped: false,
    bornIn: 'entry' as EntryId,
  };
}

const headrooms: Record<string, number | null> = { a: 500_00, b: -200_00, c: null, d: 900_00 };
const standingOf = ({ id }: LotState): Standing => ({
  maxBid: headrooms[id] === null ? null : cents(10_000_00),
  headroom: headrooms[id] === undefined || headrooms[id] === null ? null : (headrooms[id] as Cents),
  missing: headrooms[id] === null ? ['There is no retail figure.'] : [],
});

const lots = [
  lot('a', { make: 'Larkspur', model: 'Hauler', vin: '1LS', proxy: cents(9_000_00) }, 30),
  lot('b', { make: 'Tamarack', model: 'Box 12' }, 2),
  lot('c', { make: 'Larkspur', model: 'Bellman' }),
  lot('d', { make: 'Bramble', model: 'Flatbed' }, -1),
];
const view = (change: Partial<ListView>): ListView => ({
  show: 'all',
  sort: 'close',
  descending: false,
  search: '',
  byVenue: false,
  ...change,
});
const order = (change: Partial<ListView>) =>
  orderLots(lots, view(change), {
    works: { of: standingOf, bids: bidsUnder({ venues: [] }, standingOf) },
    now: NOW,
    by: columnOf(view(change).sort)?.by ?? (() => () => null),
  }).map(({ id }) => id as string);

describe('the order of the list', () => {
  test('puts the next close first and lots without one last, in either direction', () => {
    expect(order({})).toEqual(['d', 'b', 'a', 'c']);
    expect(order({ descending: true })).toEqual(['a', 'b', 'd', 'c']);
  });

  test('sorts by headroom with unknown ones last, in either direction', () => {
    expect(order({ sort: 'headroom', descending: true })).toEqual(['d', 'a', 'b', 'c']);
    expect(order({ sort: 'headroom' })).toEqual(['b', 'a', 'd', 'c']);
  });

  test('sorts by the car’s name without regard to capitals', () => {
    expect(order({ sort: 'car' })).toEqual(['d', 'c', 'a', 'b']);
  });

  test.each([
    ['open', ['b', 'a', 'c']],
    ['day', ['b']],
    ['unplaced', ['b']],
    ['unfinished', ['c']],
    ['closed', ['d']],
  ] as const)('shows only what is %s', (show, expected) => {
    expect(order({ show })).toEqual(expected);
  });

  test('finds every word anywhere, and nothing when one of them is nowhere', () => {
    expect(order({ search: 'HAUL lark' })).toEqual(['a']);
    expect(order({ search: 'larkspur box' })).toEqual([]);
  });
});
