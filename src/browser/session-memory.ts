import browser from 'webextension-polyfill';

/**
 * What outlives the background and ends with the browser. It lies in memory, so neither a full disk nor a database that
 * another tab holds can take it. Only what this very build wrote is ever found there.
 */
export async function recall<Value>(name: string): Promise<Value | undefined> {
  const found = await browser.storage.session.get(name);
  // Nobody else writes here, and an update of the extension empties it.
  return found[name] as Value | undefined;
}

/** Keeps plain data under a name; a few megabytes at most. */
export async function remember<Value>(name: string, value: Value): Promise<void> {
  await browser.storage.session.set({ [name]: value });
}
