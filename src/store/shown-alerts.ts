import type { Outcome } from '../domain/outcome.ts';
import type { Entry } from '../journal/entry.ts';
import { ALERTS } from '../journal/subject.ts';
import { appendWith } from './append.ts';
import type { Session } from './session.ts';

/** The keys of every alert that was shown, on whichever device. */
export function shownAlerts(session: Session): Promise<ReadonlySet<string>> {
  return session.connection.read(async (tx) => new Set(await tx.objectStore('alerts').getAllKeys()));
}

/** Writes down that alerts were shown. Keys that are written down already are left out; no entry when none is left. */
export function recordShown(session: Session, keys: readonly string[]): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async (tx) => {
    const alerts = tx.objectStore('alerts');
    const fresh: string[] = [];
    for (const key of new Set(keys)) if ((await alerts.getKey(key)) === undefined) fresh.push(key);
    return fresh.length === 0 ? [] : [{ subject: ALERTS, happening: { kind: 'alerts-shown', keys: fresh } }];
  });
}
