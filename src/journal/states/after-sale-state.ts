import type { NotedStepName, StepDone } from '../../domain/after-sale/win-step.ts';
import type { DisputeOutcome, DisputeRecord, DisputeStep } from '../../domain/dispute/dispute.ts';
import type { Noted } from './noted.ts';

export interface DisputeState extends DisputeRecord, Noted {
  readonly steps: readonly (DisputeStep & Noted)[];
  readonly outcome?: (DisputeOutcome & Noted) | undefined;
}

/** What followed the hammer. A lot of which nothing was noted has none of it. */
export interface AfterSaleState {
  readonly steps: Readonly<Partial<Record<NotedStepName, readonly (StepDone & Noted)[]>>>;
  /** In the order in which they were opened. */
  readonly disputes: readonly DisputeState[];
  /** Whether there is an open dispute, only closed ones, or (absent) none: the store finds lots by it. */
  readonly disputed?: 'open' | 'closed';
}

export const NOTHING_AFTER: AfterSaleState = { steps: {}, disputes: [] };
