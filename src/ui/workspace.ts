import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotField, LotId, LotSource } from '../domain/lot/lot.ts';
import type { Outcome } from '../domain/outcome.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { EntryId } from '../journal/ids.ts';
import type { Store } from '../store/store.ts';
import type { PlanNow } from '../store/views/kept-plan.ts';
import type { PlannedBids } from '../views/lots/planned-bids.ts';

/** A change that was kept, and the entry to undo if it was a slip. */
export interface Kept {
  readonly entry: EntryId;
}

export interface NewLot {
  readonly facts: LotFacts;
  readonly evidence: Readonly<Record<string, Evidence>>;
}

/**
 * What the screens see of the store: the lots and the setup as they stand now, in every tab at once, and the few things
 * that can be done to them. Each change is one journal entry; a failure comes back as a sentence and changes nothing.
 */
export interface Workspace {
  /** Every lot that is known so far; grows once while the page opens (see `complete`). Not the dropped ones. */
  readonly lots: readonly LotState[];
  /** Whether all lots have been read; until then only the next ones to close are there. */
  readonly complete: boolean;
  readonly setup: Setup;
  /** False until the user has kept a setup of his own (or loaded the demo). */
  readonly setupKept: boolean;
  /** The plan as it was last made in this browser; null while there is none. */
  readonly plan: PlanNow | null;
  /** Its bids. */
  readonly planned: PlannedBids;
  readonly changeLot: (
    id: LotId,
    set: LotFacts,
    clear?: readonly LotField[],
    evidence?: Readonly<Record<string, Evidence>>,
  ) => Promise<Outcome<Kept>>;
  readonly dropLot: (id: LotId) => Promise<Outcome<Kept>>;
  readonly addLot: (source: LotSource, lot: NewLot) => Promise<Outcome<Kept & { readonly id: LotId }>>;
  readonly saveSetup: (set: Partial<Setup>) => Promise<Outcome<Kept>>;
  readonly undo: (entry: EntryId) => Promise<Outcome<Kept>>;
  /** The store itself, for imports, histories, backups and what else few screens need. */
  readonly store: Store;
  /** Says a sentence at the foot of the page, with an undo of all these entries when there are any. */
  readonly say: (sentence: string, ...undo: readonly (EntryId | undefined)[]) => void;
}

export const WorkspaceContext = createContext<Workspace | null>(null);

/** @throws Error outside the page's frame: our own mistake. */
export function useWorkspace(): Workspace {
  const workspace = useContext(WorkspaceContext);
  if (workspace === null) throw new Error('no workspace around this screen');
  return workspace;
}
