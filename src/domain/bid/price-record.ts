import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import type { PriceSeen } from './bidding.ts';

/** The price that counts. */
export interface PriceRecord {
  readonly cents: Cents;
  /** When it was first seen at this amount, and when last. */
  readonly since: Instant;
  readonly seenAt: Instant;
  /** A later reading of a page or a list that is lower, which nobody has explained yet. */
  readonly fell?: PriceSeen;
}

/**
 * Which of the prices seen counts; undefined when none was. Prices of an open sale rise (common practice, no source), so a
 * lower reading means that one of the two is wrong. A person who types a lower price corrects what stood there. A page or a
 * list that shows one does not: the higher one counts until somebody says, since believing the lower could hide that we
 * are outbid.
 * @param seen by the time at which they were seen
 */
export function priceRecord(seen: readonly PriceSeen[]): PriceRecord | undefined {
  let record: PriceRecord | undefined;
  for (const reading of seen) {
    const { cents, seenAt, from } = reading;
    if (record === undefined) record = { cents, since: seenAt, seenAt };
    else if (cents < record.cents && from !== 'typed') record = { ...record, fell: reading };
    else record = { cents, since: cents === record.cents ? record.since : seenAt, seenAt };
  }
  return record;
}
