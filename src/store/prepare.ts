import type { Outcome } from '../domain/outcome.ts';
import { ok } from '../domain/outcome.ts';
import { FOLD_VERSION } from '../journal/fold-version.ts';
import { DEVICE_RANDOM_BYTES, newDeviceId } from '../journal/sortable-id.ts';
import { refusalFor } from './append.ts';
import { freshHead, lastIdOf, readHead, writeHead } from './head.ts';
import { rebuildViews } from './rebuild.ts';
import { viewsSchema, type WriteTransaction } from './schema.ts';
import type { Session } from './session.ts';

/** At every opening: gives a new browser its device id, and makes the views again when another version made them. */
export async function prepare(session: Session, author: string): Promise<Outcome<null>> {
  try {
    const ready = await session.connection.read(async (tx) => {
      const meta = tx.objectStore('meta');
      return (await meta.getKey('head')) !== undefined && isCurrent(await meta.get('views'));
    });
    if (!ready) await session.connection.write((tx) => makeReady(session, tx, author));
    return ok(null);
  } catch (error) {
    return { ok: false, ...refusalFor(error) };
  }
}

/** Asks everything again: another tab may have done it in between. */
async function makeReady(session: Session, tx: WriteTransaction, author: string): Promise<void> {
  const meta = tx.objectStore('meta');
  if ((await meta.getKey('head')) === undefined) {
    const device = newDeviceId(session.random(DEVICE_RANDOM_BYTES));
    await writeHead(tx, freshHead(device, author, await lastIdOf(tx)));
  } else await readHead(tx);
  if (!isCurrent(await meta.get('views'))) await rebuildViews(tx);
}

function isCurrent(stored: unknown): boolean {
  const views = viewsSchema.safeParse(stored);
  return views.success && views.data.foldVersion === FOLD_VERSION;
}
