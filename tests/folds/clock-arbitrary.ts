import fc from 'fast-check';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';

const CLOSE = instant(Date.UTC(2026, 3, 11, 18));
/** Always the same, so that what was said of a close is often said of this one. */
export const someClose: fc.Arbitrary<CloseTime> = fc.constant({
  instant: CLOSE,
  text: 'Sat 12:00 PM',
  zone: zone('America/Boise'),
  how: 'stated-zone',
  doubts: [],
  otherwise: [],
});

/** What is said back to a lot's calls. */
export const clockHappenings = {
  'calls-put-off': fc.constant(() => ({ kind: 'calls-put-off' as const, until: CLOSE })),
  'calls-done': fc.constant(() => ({ kind: 'calls-done' as const, close: CLOSE })),
  'handed-over': fc
    .constantFrom('Closer', 'Lot attendant', null)
    .map((to) => () => ({ kind: 'handed-over' as const, to })),
  'close-extended': fc
    .tuple(fc.constantFrom(CLOSE, instant(CLOSE + 120_000)), fc.constantFrom(2, 5))
    .map(([from, minutes]) => () => ({ kind: 'close-extended' as const, from, minutes })),
  'lot-alerts-changed': fc
    .constantFrom<number[] | null>([30, 10], [], null)
    .map((leadMinutes) => () => ({ kind: 'lot-alerts-changed' as const, leadMinutes })),
};
