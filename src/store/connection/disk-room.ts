/** With less than this left the databases of browsers can't even be opened. */
const TOO_LITTLE = 1_000_000;

/** Whether the browser says that there is no room left; false where it does not say. */
export async function isDiskFull(): Promise<boolean> {
  const storage = (globalThis as { navigator?: { storage?: StorageManager } }).navigator?.storage;
  if (storage?.estimate === undefined) return false;
  try {
    const { usage, quota } = await storage.estimate();
    return usage !== undefined && quota !== undefined && quota - usage < TOO_LITTLE;
  } catch {
    // It is asked to explain another failure, which is told all the same.
    return false;
  }
}
