import type { Outcome, Refusal } from '../../domain/outcome.ts';
import type { Delivered, WireRefusal } from '../wire/wire.ts';

/** Ends a run of fetching; the next begins where it ended. */
export class Stopped extends Error {
  readonly refusal: Refusal;

  constructor(refusal: Refusal) {
    super(refusal.message);
    this.refusal = refusal;
  }
}

/** Why the work ended early; null when it did not. */
export async function whileAnswered(work: () => Promise<void>): Promise<Refusal | null> {
  try {
    await work();
    return null;
  } catch (error) {
    if (error instanceof Stopped) return error.refusal;
    throw error;
  }
}

/** @throws Stopped, so that nobody goes round in circles */
export function inOrder({ place }: Delivered, from: number): void {
  if (place >= from) return;
  throw new Stopped({
    reason: 'out-of-order',
    message: `The team’s server handed out message ${place} again, out of its order. Nothing more was fetched. Ask whoever runs it.`,
  });
}

export function answered<Value>(outcome: Outcome<Value, WireRefusal>): Value {
  if (!outcome.ok) throw new Stopped(outcome);
  return outcome.value;
}
