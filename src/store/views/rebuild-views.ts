import type { Outcome } from '../../domain/outcome.ts';
import type { Views } from '../connection/schema.ts';
import type { Session } from '../write/session.ts';
import { EVERYTHING } from '../write/touched.ts';
import { tryWrite } from '../write/try-write.ts';
import { foldIntoViews } from './fold-into-views.ts';

/** Throws every view away and makes it again from the journal, in one transaction. */
export async function rebuildViews(session: Session): Promise<Outcome<Views>> {
  const rebuilt = await tryWrite(session, foldIntoViews);
  if (rebuilt.ok) session.feed.announce(EVERYTHING);
  return rebuilt;
}
