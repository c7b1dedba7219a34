import { type Outcome, ok } from '../../domain/outcome.ts';
import { isSameFact } from '../../folds/same-fact.ts';
import type { Entry } from '../../journal/entry.ts';
import type { SealedChange } from '../../journal/make-entry.ts';
import type { Head, WriteTransaction } from '../connection/schema.ts';
import { writeEntries } from './append.ts';
import { readHead } from './head.ts';
import { refusalFor } from './refused.ts';
import type { Session } from './session.ts';
import { Touched } from './touched.ts';

interface RunOptions {
  /** Asked when the change before has come to its end, whichever that was. False: this one is not written. */
  readonly goOn: () => boolean;
  /** Called when all is in the browser's hands and only its end is waited for: the time to get the next ready. */
  readonly onHandedOver: () => void;
}

/** What is written of a change; nothing when it was called off. */
type Written = Outcome<readonly Entry[]>;

/**
 * Many changes, each an entry and a transaction of its own, handed to the browser while it is still at the one before:
 * it would have nothing to do in between. Each is made for the place in the chain where the one before will leave it, and
 * is dropped and made again if another tab wrote in between.
 */
export function appendRun(session: Session): (change: SealedChange, options: RunOptions) => Promise<Written> {
  /** Where the chain will be once all that was handed over is written; null when that is not known. */
  let ahead: Head | null = null;

  async function write(tx: WriteTransaction, change: SealedChange, touched: Touched, options: RunOptions) {
    const expected = ahead;
    const asked = readHead(tx);
    // Heard below; until then its failure must not look as if nobody cared.
    asked.catch(() => undefined);
    const start = expected ?? (await asked);
    if (expected === null && !options.goOn()) return [];
    const { entries, head } = await writeEntries(session, tx, { head: start, changes: [change], touched });
    ahead = head;
    options.onHandedOver();
    const found = await asked;
    if (expected !== null && !isSameFact(found, expected)) throw new MovedOn();
    if (expected !== null && !options.goOn()) throw new CalledOff();
    return entries;
  }

  async function append(change: SealedChange, options: RunOptions): Promise<Written> {
    const touched = new Touched();
    try {
      const entries = await session.connection.write((tx) => write(tx, change, touched, options));
      if (entries.length > 0) session.feed.announce(touched.asChange());
      return ok(entries);
    } catch (error) {
      ahead = null;
      if (error instanceof MovedOn) return append(change, options);
      return error instanceof CalledOff ? ok([]) : { ok: false, ...refusalFor(error) };
    }
  }
  return append;
}

/** Another tab wrote in between. */
class MovedOn extends Error {}

/** The user, or the end of a change before, has stopped it. */
class CalledOff extends Error {}
