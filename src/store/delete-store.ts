import { deleteDB } from 'idb';

/** Another tab that is slow to let go must not keep this one waiting; the browser deletes the database once it has. */
const PATIENCE_MS = 3000;

/** Deletes a whole database with everything in it. */
export async function deleteStore(name: string): Promise<void> {
  await Promise.race([deleteDB(name), new Promise((resolve) => setTimeout(resolve, PATIENCE_MS))]);
}
