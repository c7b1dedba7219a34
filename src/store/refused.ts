import type { Refusal } from '../domain/outcome.ts';

/** Thrown inside a transaction to end it with nothing written; append turns it into a refusal for the user. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly refusal: Refusal;

  constructor(reason: string, message: string) {
    super(message);
    this.refusal = { reason, message };
  }
}
