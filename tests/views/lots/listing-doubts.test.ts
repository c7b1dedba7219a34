import { describe, expect, test } from 'vitest';
import { type LotId, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { listingDoubts } from '../../../src/views/lots/listing-doubts.ts';

const setup = startingSetup(zone('America/Boise'));
const lot = (id: string, day: number, facts: object): LotState => ({
  id: id as LotId,
  facts: lotFactsSchema.parse(facts),
  evidence: {},
  source: 'typed',
  addedAt: instant(Date.UTC(2026, 10, day, 18)),
  changedAt: instant(Date.UTC(2026, 10, day, 18)),
  dropped: false,
  bornIn: '' as EntryId,
});
const VIN = '1ZL3H4C21M0104471';

describe('what does not fit together in a list', () => {
  test('is found between two lots of the same car, and names where and when it was seen', () => {
    const before = lot('A', 3, { vin: VIN, miles: 61_000, venueName: 'Saguaro Sale Yard' });
    const now = lot('B', 24, { vin: VIN, miles: 42_000 });
    const other = lot('C', 24, { vin: '1ZL3H4C21M0104472', miles: 10 });
    const doubts = listingDoubts([before, now, other], setup);
    expect(doubts(now).map(({ kind }) => kind)).toContain('miles-fell');
    expect(
      doubts(now)
        .map(({ message }) => message)
        .join(' '),
    ).toContain('its listing at Saguaro Sale Yard, seen Tue Nov 3,');
    expect(doubts(other).filter(({ kind }) => kind === 'miles-fell')).toEqual([]);
  });

  test('is nothing where there is no VIN, and a lot does not contradict itself', () => {
    const plain = lot('A', 3, { miles: 61_000 });
    const twin = lot('B', 24, { miles: 42_000 });
    expect(listingDoubts([plain, twin], setup)(plain)).toEqual([]);
  });
});
