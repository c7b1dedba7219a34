/** How much of the browser's storage is used, and how much there is, in bytes. Both are the browser's own estimate. */
export interface StorageRoom {
  readonly usedBytes: number;
  readonly quotaBytes: number;
}

const MB = 1_000_000;
/** From this share of the quota on, the user is told. */
const TIGHT_SHARE = 0.8;
/** Below this much room he is told as well, however large the disk is. */
const TIGHT_BYTES = 200 * MB;

/** Asks the browser. Null where it does not say, as where storage is switched off. */
export async function storageRoom(): Promise<StorageRoom | null> {
  const storage = (globalThis as { navigator?: { storage?: StorageManager } }).navigator?.storage;
  if (storage?.estimate === undefined) return null;
  try {
    const { usage, quota } = await storage.estimate();
    return usage === undefined || quota === undefined ? null : { usedBytes: usage, quotaBytes: quota };
  } catch {
    // The estimate is only for a warning: without it, the write itself says when the disk is full.
    return null;
  }
}

/** What to tell the user before the room runs out, or null while there is plenty. */
export function tightRoomSentence(room: StorageRoom | null): string | null {
  if (room === null) return null;
  const left = Math.max(0, room.quotaBytes - room.usedBytes);
  if (left >= TIGHT_BYTES && room.usedBytes < room.quotaBytes * TIGHT_SHARE) return null;
  return `Space for files is running low: ${sayBytes(left)} of ${sayBytes(room.quotaBytes)} left. Save a backup and free some space on this disk before it is full.`;
}

/** A size for a reader: `340 bytes`, `12 kB`, `3.4 MB`. Thousands, not 1024s, as disks are sold. */
export function sayBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  if (bytes < MB) return `${Math.round(bytes / 1000)} kB`;
  if (bytes < 1000 * MB) return `${(bytes / MB).toFixed(bytes < 10 * MB ? 1 : 0)} MB`;
  return `${(bytes / (1000 * MB)).toFixed(1)} GB`;
}
