import fc from 'fast-check';
import { cents } from '../../src/domain/money/cents.ts';
import type { Attachment } from '../../src/domain/sale/attachment.ts';
import type { BidAction } from '../../src/domain/sale/bid-action.ts';
import type { Result } from '../../src/domain/sale/result.ts';
import { instant } from '../../src/domain/time/instant.ts';

export const someCents = fc.nat(5_000_000).map(cents);

export const bidAction: fc.Arbitrary<BidAction> = fc.record({
  action: fc.constantFrom('proxy-placed', 'proxy-cut', 'proxy-withdrawn', 'live-bid'),
  cents: someCents,
  at: fc.constant(instant(Date.UTC(2026, 3, 10))),
});

export const result: fc.Arbitrary<Result> = fc.oneof(
  someCents.map((hammerCents) => ({ ended: 'won' as const, hammerCents })),
  fc.constant({ ended: 'lost' as const }),
  fc.constant({ ended: 'withdrawn' as const }),
);

export const attachment: fc.Arbitrary<Attachment> = fc.record({
  hash: fc.constantFrom('0'.repeat(64), 'f'.repeat(64)),
  name: fc.string({ minLength: 1, maxLength: 8 }),
  mediaType: fc.constantFrom('image/png', ''),
  sizeBytes: fc.nat(1000).map((n) => n + 1),
  about: fc.constantFrom('photo', 'other'),
});
