/**
 * The answer of anything that can fail for a reason the user can act on.
 * Thrown errors are kept for our own mistakes; bad input is a value.
 */
export type Outcome<Value, Failure extends { reason: string } = Refusal> =
  | { readonly ok: true; readonly value: Value }
  | ({ readonly ok: false } & Failure);

/** A named reason, and a sentence that says what to do about it. */
export interface Refusal {
  readonly reason: string;
  readonly message: string;
}

export const ok = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({
  ok: true,
  value,
});

export const refuse = <Reason extends string>(
  reason: Reason,
  message: string,
): {
  readonly ok: false;
  readonly reason: Reason;
  readonly message: string;
} => ({
  ok: false,
  reason,
  message,
});
