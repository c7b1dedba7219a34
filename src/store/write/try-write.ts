import { type Outcome, ok } from '../../domain/outcome.ts';
import type { WriteTransaction } from '../connection/schema.ts';
import { refusalFor } from './refused.ts';
import type { Session } from './session.ts';

/** One transaction of writing, with what can go wrong as a value. */
export async function tryWrite<Value>(
  session: Session,
  work: (tx: WriteTransaction) => Promise<Value>,
): Promise<Outcome<Value>> {
  try {
    return ok(await session.connection.write(work));
  } catch (error) {
    return { ok: false, ...refusalFor(error) };
  }
}
