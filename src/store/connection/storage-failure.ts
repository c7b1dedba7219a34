import type { Refusal } from '../../domain/outcome.ts';

export type StorageReason =
  | 'disk-full'
  | 'newer-data'
  | 'not-allowed'
  | 'blocked'
  | 'upgrade-failed'
  | 'updated-elsewhere'
  | 'database-failed';

export interface StorageRefusal extends Refusal {
  readonly reason: StorageReason;
}

export const SENTENCES: Readonly<Record<StorageReason, string>> = {
  'disk-full':
    'The disk is full, or the browser allows Headroom no more of it. What was saved before is still there, but nothing new can be saved. Free some space, then try again.',
  'newer-data': 'This data was last used by a newer Headroom. Update Headroom to open it. Nothing was changed.',
  'not-allowed':
    'This browser window stores no data. Headroom does not work in a private window, or where the browser is set to clear everything when it closes.',
  blocked: 'Another tab has an older version of Headroom open. Close every other Headroom tab, then reload this one.',
  'upgrade-failed':
    'Your data could not be updated to this version of Headroom. It is unchanged. Reload; if it happens again, restart the browser.',
  'updated-elsewhere': 'Headroom was updated in another tab. Reload this page to continue.',
  'database-failed':
    'The browser could not reach its database. Nothing was saved. Try again; if it happens again, restart the browser.',
};

export function storageRefusal(reason: StorageReason): StorageRefusal {
  return { reason, message: SENTENCES[reason] };
}

/** What the browser's error means for the user, or null when it is not the browser's but a mistake of ours. */
export function asStorageRefusal(error: unknown): StorageRefusal | null {
  if (error instanceof StoreUnavailable) return storageRefusal(error.reason);
  switch (error instanceof Error ? error.name : '') {
    case 'QuotaExceededError':
      return storageRefusal('disk-full');
    case 'VersionError':
      return storageRefusal('newer-data');
    case 'SecurityError':
    case 'NotAllowedError':
      return storageRefusal('not-allowed');
    // The browser ended the transaction or the connection: its process died, the profile's files cannot be read, …
    case 'AbortError':
    case 'InvalidStateError':
    case 'UnknownError':
    case 'TimeoutError':
    case 'OperationError':
    case 'NotReadableError':
      return storageRefusal('database-failed');
    default:
      return null;
  }
}

/** What Chromium writes into an error of its database when the disk under it has no room; its name says only that it failed. */
const NO_ROOM = /no[_ ]?space|disk full/i;

/**
 * As `asStorageRefusal`, after a look at the disk: Chromium names a full one as a database that failed, which no restart
 * mends.
 * @param isDiskFull asked only where the browser's own word leaves it open
 */
export async function storageRefusalOf(
  error: unknown,
  isDiskFull: () => Promise<boolean>,
): Promise<StorageRefusal | null> {
  const refusal = asStorageRefusal(error);
  if (refusal?.reason !== 'database-failed') return refusal;
  const named = error instanceof Error && NO_ROOM.test(error.message);
  return named || (await isDiskFull()) ? storageRefusal('disk-full') : refusal;
}

/** Thrown by reading, where there is no value to give back: the browser does not let us at the data. */
export class StoreUnavailable extends Error {
  override readonly name = 'StoreUnavailable';
  readonly reason: StorageReason;

  constructor(refusal: StorageRefusal, cause?: unknown) {
    super(refusal.message, { cause });
    this.reason = refusal.reason;
  }
}
