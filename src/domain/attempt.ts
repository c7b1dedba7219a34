import { type Outcome, ok, type Refusal } from './outcome.ts';

/** One of many that can't be worked out, by a mistake of ours. The others can. */
export interface CantWorkOut extends Refusal {
  readonly reason: 'cant-work-out';
  /** What went wrong, to stand behind a colon. */
  readonly short: string;
  /** What was thrown, for whoever mends it. */
  readonly cause: unknown;
}

/**
 * Works out one thing of many, so that a mistake in it costs only that one. Every list, plan, fold and export that goes
 * over lots, comparables, claims, bills or entries asks for each of them through here, and goes on with the next.
 * What a user can put right is an `Outcome` of its own; this is for what nobody expected.
 */
export function attempt<Value>(work: () => Value): Outcome<Value, CantWorkOut> {
  try {
    return ok(work());
  } catch (cause) {
    return cantWorkOut(cause);
  }
}

/** What could be worked out of many, and the rest with the reason why not; both in the order given. */
export interface Attempts<Item, Value> {
  readonly done: readonly Value[];
  readonly failed: readonly { readonly item: Item; readonly why: CantWorkOut }[];
}

/** Asks for each of many on its own. */
export function attemptEach<Item, Value>(items: Iterable<Item>, work: (item: Item) => Value): Attempts<Item, Value> {
  const done: Value[] = [];
  const failed: { item: Item; why: CantWorkOut }[] = [];
  for (const item of items) {
    const outcome = attempt(() => work(item));
    if (outcome.ok) done.push(outcome.value);
    else failed.push({ item, why: outcome });
  }
  return { done, failed };
}

/** A thrown mistake as a refusal, in a sentence that says what to do. */
export function cantWorkOut(cause: unknown): { readonly ok: false } & CantWorkOut {
  const said = cause instanceof Error && cause.message !== '' ? cause.message : String(cause);
  const short = said.replace(/\.$/, '');
  const message = `Can’t be worked out: ${short}. Check its figures, or undo the last change to it. Everything else goes on.`;
  return { ok: false, reason: 'cant-work-out', short, message, cause };
}
