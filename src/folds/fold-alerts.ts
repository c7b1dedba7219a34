import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import { rowOf } from '../journal/happening.ts';
import { countingInOrder } from './undo.ts';

/** An alert that was shown: its stable key, and when the first entry that says so was written. */
export interface ShownAlert {
  readonly key: string;
  readonly at: Instant;
}

/** Every alert that was shown, on any device, and was not shown by a wrong clock. */
export function foldAlertsShown(entries: Iterable<Entry>): Map<string, ShownAlert> {
  const shown = new Map<string, ShownAlert>();
  for (const entry of countingInOrder(entries)) applyToAlerts(shown, entry);
  return shown;
}

/** Applies an entry that counts, and sorts after all that were applied before. */
export function applyToAlerts(shown: Map<string, ShownAlert>, entry: Entry): void {
  const said = alertsIn(entry);
  for (const alert of said.shown) if (!shown.has(alert.key)) shown.set(alert.key, alert);
  for (const key of said.voided) shown.delete(key);
}

/** What one entry says of alerts: those that were shown, and the keys of those that count as never shown. */
export function alertsIn({ at, happening }: Entry): {
  readonly shown: readonly ShownAlert[];
  readonly voided: readonly string[];
} {
  const row = rowOf(happening);
  const { shown = [], voided = [] } = row.about === 'alerts' ? row.fold(happening) : {};
  return { shown: shown.map((key) => ({ key, at })), voided };
}
