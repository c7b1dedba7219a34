import { expect, test } from 'vitest';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { HAPPENING_KINDS } from '../../../src/journal/happening.ts';
import type { PackShows } from '../../../src/journal/happenings/row.ts';
import type { Envelope } from '../../../src/journal/read-entry.ts';
import { showsUnder } from '../../../src/views/history/pack-choice.ts';

/** A pack looks at what happened only. */
const shown = (shows: PackShows, happening: object): boolean => showsUnder(shows)({ happening } as unknown as Envelope);
const change = (set: object, clear: string[] = []) => ({ kind: 'lot-changed', set, clear, evidence: {} });

test('receipts, results, files and what the listing states go out', () => {
  for (const kind of ['bid-noted', 'result-noted', 'attachment-kept', 'undone', 'lot-dropped'])
    expect(shown('sale', { kind }), kind).toBe(true);
  expect(shown('sale', change({ priceNow: 5, miles: 3 }, ['close']))).toBe(true);
  expect(shown('sale', { kind: 'lots-added', lots: [{ id: 'a', facts: { make: 'Alder' } }] })).toBe(true);
});

test('what we think and what it costs us stays, even beside a fact that may go', () => {
  const own = ['retail', 'comps', 'ceilings', 'claims', 'recon', 'transport', 'funding', 'notes', 'sealed'];
  for (const field of own) {
    expect(Object.keys(lotFactsSchema.shape), field).toContain(field);
    expect(shown('sale', change({ priceNow: 5, [field]: 1 })), field).toBe(false);
    expect(shown('sale', change({}, [field])), field).toBe(false);
    expect(shown('sale', { kind: 'lots-added', lots: [{ id: 'a', facts: { [field]: 1 } }] }), field).toBe(false);
  }
});

test('the books, and any kind that nobody thought of here, go out only with everything', () => {
  const outward = HAPPENING_KINDS.filter((kind) => shown('dispute', { kind }));
  expect(outward.sort()).toEqual([
    'attachment-kept',
    'bid-noted',
    'dispute-changed',
    'dispute-closed',
    'dispute-opened',
    'dispute-stepped',
    'lot-changed',
    'lot-dropped',
    'lots-added',
    'result-noted',
    'step-noted',
    'undone',
  ]);
  expect(shown('sale', { kind: 'dispute-opened' })).toBe(false);
  expect(shown('dispute', { kind: 'payment-booked' })).toBe(false);
  expect(shown('everything', { kind: 'payment-booked' })).toBe(true);
  expect(shown('dispute', { kind: 'of-a-newer-version' })).toBe(false);
});
