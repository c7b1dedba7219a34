import type { LotFacts, LotId, LotSource } from '../domain/lot/lot.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { EntryId, Evidence } from './entry.ts';

/** A lot as the journal leaves it: the fold of every entry about it, in the order of their ids. */
export interface LotState {
  readonly id: LotId;
  readonly facts: LotFacts;
  /** Where each field's present value came from, by field name. */
  readonly evidence: Readonly<Record<string, Evidence>>;
  readonly source: LotSource;
  readonly addedAt: Instant;
  readonly changedAt: Instant;
  /** No longer watched; kept because nothing is ever deleted. */
  readonly dropped: boolean;
  /** The entry that brought it in (perhaps together with others). */
  readonly bornIn: EntryId;
}
