/** Whether the browser has promised not to clear our data by itself; null where it can't be asked. */
export async function hasPromisedToKeep(): Promise<boolean | null> {
  const storage = storageManager();
  return storage?.persisted === undefined ? null : storage.persisted();
}

/** Asks for that promise, once there is something to lose. Extension pages are answered without a question to the user. */
export async function askToKeep(): Promise<void> {
  const storage = storageManager();
  if (storage?.persist !== undefined && !(await storage.persisted())) await storage.persist();
}

function storageManager(): StorageManager | undefined {
  return (globalThis as { navigator?: { storage?: StorageManager } }).navigator?.storage;
}
