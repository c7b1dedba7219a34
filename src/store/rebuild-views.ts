import type { Outcome } from '../domain/outcome.ts';
import { foldIntoViews } from './fold-into-views.ts';
import type { Views } from './schema.ts';
import type { Session } from './session.ts';
import { EVERYTHING } from './touched.ts';
import { tryWrite } from './try-write.ts';

/** Throws every view away and makes it again from the journal, in one transaction. */
export async function rebuildViews(session: Session): Promise<Outcome<Views>> {
  const rebuilt = await tryWrite(session, foldIntoViews);
  if (rebuilt.ok) session.feed.announce(EVERYTHING);
  return rebuilt;
}
