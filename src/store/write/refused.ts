import type { Refusal } from '../../domain/outcome.ts';
import { asStorageRefusal } from '../connection/storage-failure.ts';

/** Thrown inside a transaction to end it with nothing written; append turns it into a refusal for the user. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly refusal: Refusal;

  constructor(reason: string, message: string) {
    super(message);
    this.refusal = { reason, message };
  }
}

/** What the user is told of a failed write. @throws the error itself when it is a mistake of ours. */
export function refusalFor(error: unknown): Refusal {
  if (error instanceof Refused) return error.refusal;
  const refusal = asStorageRefusal(error);
  if (refusal === null) throw error;
  return refusal;
}
