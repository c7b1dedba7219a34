import type { LotId } from '../../domain/lot/lot.ts';
import type { Entry } from '../../journal/entry.ts';

/** The entries that some lots and their prices follow from, undos included. */
export interface EntriesOfLots {
  readonly setup: readonly Entry[];
  readonly lots: readonly {
    readonly id: LotId;
    /** What brought it in, perhaps with others. */
    readonly arrival: Entry;
    readonly about: readonly Entry[];
  }[];
}
