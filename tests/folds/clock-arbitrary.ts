import fc from 'fast-check';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import type { Happening } from '../../src/journal/happening.ts';

export type ClockHappening = Extract<
  Happening,
  { kind: 'calls-put-off' | 'calls-done' | 'handed-over' | 'close-extended' | 'lot-alerts-changed' }
>;

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

export const clockHappening: fc.Arbitrary<ClockHappening> = fc.oneof(
  fc.record({ kind: fc.constant('calls-put-off' as const), until: fc.constant(CLOSE) }),
  fc.record({ kind: fc.constant('calls-done' as const), close: fc.constant(CLOSE) }),
  fc.record({ kind: fc.constant('handed-over' as const), to: fc.constantFrom('Closer', 'Lot porter', null) }),
  fc.record({
    kind: fc.constant('close-extended' as const),
    from: fc.constantFrom(CLOSE, instant(CLOSE + 120_000)),
    minutes: fc.constantFrom(2, 5),
  }),
  fc.record({
    kind: fc.constant('lot-alerts-changed' as const),
    leadMinutes: fc.constantFrom<number[] | null>([30, 10], [], null),
  }),
);
