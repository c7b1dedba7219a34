import { FOLD_VERSION } from '../../folds/fold-version.ts';
import { authorSchema } from '../../journal/ids.ts';
import { DEVICE_RANDOM_BYTES, newDeviceId } from '../../journal/sortable-id.ts';
import { readIn, writeIn } from '../connection/connection.ts';
import { type Database, viewsSchema, type WriteTransaction } from '../connection/schema.ts';
import type { StoreOptions } from '../store.ts';
import { foldIntoViews } from '../views/fold-into-views.ts';
import { freshHead, lastIdOf, readHead, writeHead } from './head.ts';

type Identity = Pick<StoreOptions, 'random'> & { readonly author: string };

/**
 * At every opening: gives a new browser its device id, and makes the views again when another version made them. Also
 * after the user cleared the extension's data while a page was open: the database is then new.
 */
export async function prepare(database: Database, identity: Identity): Promise<void> {
  const ready = await readIn(database, async (tx) => {
    const meta = tx.objectStore('meta');
    return (await meta.getKey('head')) !== undefined && isCurrent(await meta.get('views'));
  });
  if (!ready) await writeIn(database, (tx) => makeReady(tx, identity));
}

/** Asks everything again: another tab may have done it in between. */
async function makeReady(tx: WriteTransaction, { random, author }: Identity): Promise<void> {
  const meta = tx.objectStore('meta');
  if ((await meta.getKey('head')) === undefined) {
    const device = newDeviceId(random(DEVICE_RANDOM_BYTES));
    writeHead(tx, freshHead(device, authorSchema.parse(author), await lastIdOf(tx)));
  } else await readHead(tx);
  if (!isCurrent(await meta.get('views'))) await foldIntoViews(tx);
}

function isCurrent(stored: unknown): boolean {
  const views = viewsSchema.safeParse(stored);
  return views.success && views.data.foldVersion === FOLD_VERSION;
}
