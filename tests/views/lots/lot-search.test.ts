import { describe, expect, test } from 'vitest';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { readSearch, searched } from '../../../src/views/lots/lot-search.ts';

const lot = (id: string, facts: LotFacts): LotState => ({
  id: id as LotId,
  facts,
  evidence: {},
  source: 'typed',
  addedAt: instant(0),
  changedAt: instant(0),
  dropped: false,
  bornIn: 'entry' as EntryId,
});

const LOTS = [
  lot('427', { make: 'Larkspur', model: 'Hauler', lotNumber: '427' }),
  lot('4271', { make: 'Larkspur', model: 'Bellman', lotNumber: 'Lot 4271' }),
  lot('A-12', { make: 'Tamarack', model: 'Box 12', lotNumber: '#A-12' }),
  lot('none', { make: 'Tamarack', model: 'Box 427', vin: '1ZL3H4C21M0104427', notes: 'a lot of rust' }),
];
const finds = (text: string) => searched(LOTS, readSearch(text)).map(({ id }) => id as string);

describe('the search of the list', () => {
  test.each([
    ['lot 427', ['427']],
    ['Lot #427', ['427']],
    ['#427', ['427']],
    ['lot427', ['427']],
    ['run 427', ['427']],
    ['hauler lot 427', ['427']],
    ['lot 4271 bellman', ['4271']],
    ['lot a-12', ['A-12']],
  ])('“%s” is exactly that lot', (text, wanted) => expect(finds(text)).toEqual(wanted));

  test.each([
    ['lot 42', ['427', '4271']],
    ['427', ['427', '4271', 'none']],
    ['lot of rust', ['none']],
    ['tamarack lot 427', []],
    ['lot 999', []],
    ['', ['427', '4271', 'A-12', 'none']],
  ])('“%s” is every lot that it may still mean', (text, wanted) => expect(finds(text)).toEqual(wanted));
});
