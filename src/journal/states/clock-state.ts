import type { Instant } from '../../domain/time/instant.ts';

/** What its user said back to a lot's alerts. Absent until he said something. */
export interface ClockState {
  readonly putOffUntil?: Instant;
  /** When it was put off. */
  readonly putOffAt?: Instant;
  /** Where its close stood before it moved last, and when it was moved. Moves of seconds count from where they began. */
  readonly moved?: { readonly from: Instant; readonly at: Instant };
  /** No more calls for the close at this moment. */
  readonly doneFor?: Instant;
  /** `taken`: he said himself that he has it. */
  readonly handedTo?: { readonly to: string; readonly at: Instant; readonly taken?: true };
  /** What the sale added so far; it is about the close `to`, and means nothing once another close is known. */
  readonly extended?: { readonly to: Instant; readonly minutes: number; readonly at: Instant };
  readonly leadMinutes?: readonly number[];
}
