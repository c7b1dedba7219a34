import type { Instant } from '../domain/time/instant.ts';
import type { Entry } from '../journal/entry.ts';
import { rowOf } from '../journal/happening.ts';
import type { DeviceId } from '../journal/ids.ts';
import { countingInOrder } from './undo.ts';

/** An alert that was shown: its stable key, and when the first entry that says so was written. */
export interface ShownAlert {
  readonly key: string;
  readonly at: Instant;
}

/**
 * Every alert that one browser has shown, but for those that a wrong clock made it show; and, under keys of their own, the
 * corrections of every browser's clock.
 */
export function foldAlertsShown(entries: Iterable<Entry>, device: DeviceId): Map<string, ShownAlert> {
  const shown = new Map<string, ShownAlert>();
  for (const entry of countingInOrder(entries)) applyToAlerts(shown, entry, device);
  return shown;
}

/** Applies an entry that counts, and sorts after all that were applied before. */
export function applyToAlerts(shown: Map<string, ShownAlert>, entry: Entry, device: DeviceId): void {
  const said = alertsIn(entry, device);
  for (const alert of said.shown) if (!shown.has(alert.key)) shown.set(alert.key, alert);
  for (const key of said.voided) shown.delete(key);
}

/** What one entry says of one browser's alerts: those that were shown, and the keys of those that count as never shown. */
export function alertsIn(
  { at, device: by, happening }: Entry,
  device: DeviceId,
): {
  readonly shown: readonly ShownAlert[];
  readonly voided: readonly string[];
} {
  const row = rowOf(happening);
  const counts = row.about === 'alerts' && (row.counts === 'everywhere' || by === device);
  const { shown = [], voided = [] } = counts ? row.fold(happening) : {};
  return { shown: shown.map((key) => ({ key, at })), voided };
}
