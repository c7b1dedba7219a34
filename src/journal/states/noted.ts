import type { Instant } from '../../domain/time/instant.ts';
import type { EntryId } from '../ids.ts';

/** Who wrote something down, and when, and the entry to undo. */
export interface Noted {
  readonly entry: EntryId;
  readonly notedAt: Instant;
  readonly author: string;
}
