import { expect, test } from 'vitest';
import { instant } from '../../../src/domain/time/instant.ts';
import { filterDisputes, type ShownDispute } from '../../../src/views/after-sale/shown-dispute.ts';
import { dispute, PLACE, phoenix } from '../../domain/after-sale/sold-lot.ts';

const ALL = { show: 'all', side: 'any', search: '' } as const;

/** A dispute by its car; the list looks at nothing else of its lot. */
function shown(make: string, more: Partial<ShownDispute> & { given?: Parameters<typeof dispute>[0] } = {}) {
  const { given, ...rest } = more;
  const parts = { lot: { facts: { make } }, dispute: dispute(given), place: PLACE, soonest: undefined, ...rest };
  return parts as unknown as ShownDispute;
}
const makes = (list: readonly ShownDispute[]) => list.map(({ lot }) => lot.facts.make);
const ended = (text: string) => ({ outcome: { ended: 'dropped' as const, at: phoenix(text) } });

test('open disputes come first by their date, then those without one, then the ended, the latest first', () => {
  const list = [
    shown('Ended long ago', { given: ended('2026-01-05T10:00') }),
    shown('No date'),
    shown('Ended lately', { given: ended('2026-11-05T10:00') }),
    shown('Second', { soonest: instant(2000) }),
    shown('First', { soonest: instant(1000) }),
  ];
  expect(makes(filterDisputes(list, ALL))).toEqual(['First', 'Second', 'No date', 'Ended lately', 'Ended long ago']);
  expect(makes(filterDisputes(list, { ...ALL, show: 'open' }))).toEqual(['First', 'Second', 'No date']);
  expect(makes(filterDisputes(list, { ...ALL, show: 'closed' }))).toEqual(['Ended lately', 'Ended long ago']);
});

test('a search finds by car, venue, reason and what was written, whatever the order of its words', () => {
  const list = [shown('Merrow'), shown('Larkspur', { given: { words: 'The frame is bent.', side: 'theirs' } })];
  expect(makes(filterDisputes(list, { ...ALL, search: 'bent FRAME' }))).toEqual(['Larkspur']);
  expect(makes(filterDisputes(list, { ...ALL, search: 'saltgrass' }))).toHaveLength(2);
  expect(makes(filterDisputes(list, { ...ALL, search: 'defect merrow' }))).toEqual(['Merrow']);
  expect(makes(filterDisputes(list, { ...ALL, side: 'theirs' }))).toEqual(['Larkspur']);
  expect(filterDisputes(list, { ...ALL, search: 'nothing of it' })).toEqual([]);
});
