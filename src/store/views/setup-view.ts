import { NEW_BOOKKEEPING } from '../../domain/accounts/accounts.ts';
import type { Outcome } from '../../domain/outcome.ts';
import type { PurseEntry } from '../../domain/setup/purse-entry.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import type { Entry } from '../../journal/entry.ts';
import { sectionsOf } from '../../journal/states/setup-state.ts';
import { SETUP } from '../../journal/subject.ts';
import { append } from '../write/append.ts';
import type { Session } from '../write/session.ts';

/** The sections that were ever saved, or null when none was. */
export function setup(session: Session): Promise<Partial<Setup> | null> {
  return session.connection.read(async (tx) => sectionsOf((await tx.objectStore('setup').get('sections')) ?? null));
}

/** The purse as it was last counted; null without one. */
export function purse(session: Session): Promise<PurseEntry | null> {
  return session.connection.read(async (tx) => (await tx.objectStore('setup').get('sections'))?.purse ?? null);
}

/** Counts the purse, or takes it away, in one entry. */
export function setPurse(session: Session, counted: PurseEntry | null): Promise<Outcome<readonly Entry[]>> {
  return append(session, [{ subject: SETUP, happening: { kind: 'purse-set', purse: counted } }]);
}

/** Replaces whole sections, in one entry. The first one ever also names the accounts, as a new setup calls them. */
export async function saveSetup(session: Session, sections: Partial<Setup>): Promise<Outcome<readonly Entry[]>> {
  const isFirst = (await setup(session)) === null;
  const set = isFirst ? { books: NEW_BOOKKEEPING, ...sections } : sections;
  return append(session, [{ subject: SETUP, happening: { kind: 'setup-changed', set } }]);
}
