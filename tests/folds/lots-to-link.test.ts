import { expect, test } from 'vitest';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { closeTimeSchema } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { lotsToLink } from '../../src/folds/lots-to-link.ts';

function lot(id: string, closeDay: number, facts: LotFacts): LotState {
  const close = closeTimeSchema.parse({
    instant: closeDay * DAY,
    text: 'as printed',
    zone: 'America/Boise',
    how: 'stated-zone',
    doubts: [],
    otherwise: [],
  });
  return {
    id: id as LotState['id'],
    facts: { ...facts, close },
    evidence: {},
    source: 'typed',
    addedAt: instant(0),
    changedAt: instant(0),
    dropped: false,
    bornIn: id as LotState['bornIn'],
  };
}

const names = (lots: readonly LotState[]) => lots.map(({ id }) => id);
const sold = lot('sold', 10, { vin: 'V1', make: 'Merrow', model: 'Boxline', venueName: 'Saltmarsh' });
const all = [
  sold,
  lot('before', 5, { vin: 'V1', make: 'Merrow', model: 'Boxline' }),
  lot('again', 14, { vin: 'V1', make: 'Merrow', model: 'Boxline', venueName: 'Saltmarsh' }),
  lot('alike', 15, { vin: 'V2', make: 'Merrow', model: 'Boxline', venueName: 'Fogline' }),
  lot('other', 16, { make: 'Larkspur', model: 'Hauler', venueName: 'Fogline' }),
];

test('the car offered again is the one with its VIN that comes later', () => {
  expect(names(lotsToLink(all, sold, ''))).toEqual(['again']);
});

test('any later lot is found by its words, and the one with the VIN stands first', () => {
  expect(names(lotsToLink([...all].reverse(), sold, 'merrow'))).toEqual(['again', 'alike']);
  expect(names(lotsToLink(all, sold, 'fogline hauler'))).toEqual(['other']);
});

test('without a VIN the cars named like it are offered', () => {
  const { vin: _, ...facts } = sold.facts;
  expect(names(lotsToLink(all, { ...sold, facts }, ''))).toEqual(['again', 'alike']);
});
