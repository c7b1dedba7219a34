import type { Outcome } from '../../domain/outcome.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Entry } from '../../journal/entry.ts';
import { ALERTS } from '../../journal/subject.ts';
import { appendWith } from '../write/append.ts';
import type { Session } from '../write/session.ts';

/** When every alert that was shown was recorded, by its key, on whichever device. */
export function shownAlerts(session: Session): Promise<ReadonlyMap<string, Instant>> {
  return session.connection.read(
    async (tx) => new Map((await tx.objectStore('alerts').getAll()).map(({ key, at }) => [key, at])),
  );
}

/** Writes down that alerts were shown. Keys that are written down already are left out; no entry when none is left. */
export function recordShown(session: Session, keys: readonly string[]): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async (tx) => {
    const alerts = tx.objectStore('alerts');
    // Asked all at once: one after the other, thousands of keys take seconds.
    const asked = await Promise.all([...new Set(keys)].map(async (key) => ({ key, kept: await alerts.getKey(key) })));
    const fresh = asked.flatMap(({ key, kept }) => (kept === undefined ? key : []));
    return fresh.length === 0 ? [] : [{ subject: ALERTS, happening: { kind: 'alerts-shown', keys: fresh } }];
  });
}

/** Writes down that what was recorded under these keys was said by a wrong clock, and so counts as not said. */
export function voidShown(session: Session, keys: readonly string[]): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async () =>
    keys.length === 0 ? [] : [{ subject: ALERTS, happening: { kind: 'alerts-voided', keys: [...keys] } }],
  );
}
