import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import { countingInOrder } from './undo.ts';

/** An alert that was shown: its stable key, and when the first entry that says so was written. */
export interface ShownAlert {
  readonly key: string;
  readonly at: Instant;
}

/** Every alert that was shown, on any device, and was not shown by a wrong clock. */
export function foldAlertsShown(entries: Iterable<Entry>): Map<string, ShownAlert> {
  const shown = new Map<string, ShownAlert>();
  for (const entry of countingInOrder(entries)) {
    for (const alert of alertsShownIn(entry)) if (!shown.has(alert.key)) shown.set(alert.key, alert);
    for (const key of alertsVoidedIn(entry)) shown.delete(key);
  }
  return shown;
}

/** The alerts that one entry says were shown; none when it is of another kind. */
export function alertsShownIn({ at, happening }: Entry): ShownAlert[] {
  return happening.kind === 'alerts-shown' ? happening.keys.map((key) => ({ key, at })) : [];
}

/** The keys that one entry says count as never shown; none when it is of another kind. */
export function alertsVoidedIn({ happening }: Entry): readonly string[] {
  return happening.kind === 'alerts-voided' ? happening.keys : [];
}
