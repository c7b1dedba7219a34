import type { Outcome } from '../../domain/outcome.ts';
import type { ClockCorrection } from '../../domain/time/clock-correction.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Entry } from '../../journal/entry.ts';
import { ALERTS } from '../../journal/subject.ts';
import { append, appendWith } from '../write/append.ts';
import { readHead } from '../write/head.ts';
import type { Session } from '../write/session.ts';

/** When every alert that this browser has shown was recorded, by its key; and the corrections of every browser's clock. */
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

/** What was said by a clock that stood ahead, by its keys, and what that clock had come to show. */
export interface WrongClock extends ClockCorrection {
  readonly keys: readonly string[];
}

/** Writes down that the clock was put back, and that what it made us say too early counts as not said. */
export function putClockRight(session: Session, { showed, to, keys }: WrongClock): Promise<Outcome<readonly Entry[]>> {
  return append(session, [
    { subject: ALERTS, happening: { kind: 'clock-put-right', showed, to } },
    ...(keys.length === 0 ? [] : [{ subject: ALERTS, happening: { kind: 'alerts-voided' as const, keys: [...keys] } }]),
  ]);
}

/** What this browser's clock showed when it last wrote something; null when it never did. */
export function lastWritten(session: Session): Promise<Instant | null> {
  return session.connection.read(async (tx) => {
    const { device } = await readHead(tx);
    const own = IDBKeyRange.bound([device, 0], [device, Number.POSITIVE_INFINITY]);
    const last = await tx.objectStore('entries').index('sequence').openCursor(own, 'prev');
    return last?.value.at ?? null;
  });
}
