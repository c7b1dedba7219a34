import * as z from 'zod/mini';
import { type Cents, positiveCentsSchema } from '../money/cents.ts';
import { WIN_STEPS } from '../setup/after-sale-rules.ts';
import { type Instant, instantSchema } from '../time/instant.ts';

/** What can be noted of a won lot: each step that follows a win, and money that came back. */
export const NOTED_STEPS = [...WIN_STEPS, 'refund'] as const;
export type NotedStepName = (typeof NOTED_STEPS)[number];

/**
 * A step was done, or is not done after all. Of `pay` and `refund` each note is one more amount; of the others the last
 * word holds. `done: false` takes every earlier note of the step back.
 */
export const stepNoteSchema = z.strictObject({
  step: z.enum(NOTED_STEPS),
  done: z.boolean(),
  /** When it was done, which may be before it was written down: the title came in on Friday. */
  at: instantSchema,
  /** Of `pay` and `refund`. A payment without an amount was for all that was still owed. */
  cents: z.optional(positiveCentsSchema),
  note: z.optional(z.string().check(z.minLength(1), z.maxLength(400))),
});

/** One time that a step was done. */
export interface StepDone {
  readonly at: Instant;
  readonly cents?: Cents | undefined;
  readonly note?: string | undefined;
}

/** The steps that are done, each in the order in which it was noted. A step that is not here is open. */
export type StepsDone = Readonly<Partial<Record<NotedStepName, readonly StepDone[]>>>;

/** When a step was last done; undefined while it is open. */
export const doneAt = (steps: StepsDone, step: NotedStepName): Instant | undefined => steps[step]?.at(-1)?.at;
