import type { Entry } from '../journal/entry.ts';
import type { EntryId } from '../journal/ids.ts';

/** An entry that says that another no longer counts. */
export interface Undo {
  readonly id: EntryId;
  readonly target: EntryId;
}

/**
 * The ids that do not count, given every undo there is. An undo that is itself undone has no effect, so an undone undo
 * brings its target back. An undo only reaches entries with a smaller id than its own: that is the order in which
 * Headroom writes them, and it leaves no room for a circle in a forged journal.
 */
export function undoneIds(undos: Iterable<Undo>): Set<EntryId> {
  const undone = new Set<EntryId>();
  const latestFirst = [...undos].sort((a, b) => (a.id < b.id ? 1 : -1));
  for (const { id, target } of latestFirst) if (target < id && !undone.has(id)) undone.add(target);
  return undone;
}

/** `entry` as an undo, or null when it is something else. */
export function asUndo(entry: Entry): Undo | null {
  return entry.happening.kind === 'undone' ? { id: entry.id, target: entry.happening.entry } : null;
}

/** The entries that count, each once, in the order of their ids: what every fold starts from. */
export function countingInOrder(entries: Iterable<Entry>): Entry[] {
  const byId = new Map<EntryId, Entry>();
  for (const entry of entries) byId.set(entry.id, entry);
  const undone = undoneIds([...byId.values()].flatMap((entry) => asUndo(entry) ?? []));
  return [...byId.values()].filter((entry) => !undone.has(entry.id)).sort((a, b) => (a.id < b.id ? -1 : 1));
}
