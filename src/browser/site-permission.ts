import browser from 'webextension-polyfill';

const originsOf = (site: string): string[] => [`https://${site}/*`, `http://${site}/*`];

/** Whether the user lets the pages under this address be read when he opens them. */
export function mayRead(url: string): Promise<boolean> {
  const { protocol, hostname } = new URL(url);
  return browser.permissions.contains({ origins: [`${protocol}//${hostname}/*`] });
}

/** The sites whose pages may be read when they are opened, by host name. */
export async function allowedSites(): Promise<readonly string[]> {
  const { origins = [] } = await browser.permissions.getAll();
  const hosts = origins.flatMap((origin) => /^[a-z*]+:\/\/([^/*]+)\//.exec(origin)?.[1] ?? []);
  return [...new Set(hosts)].sort();
}

/** Asks the user for one site. To be called straight from his click, or the browser does not ask. */
export function requestSite(site: string): Promise<boolean> {
  return browser.permissions.request({ origins: originsOf(site) });
}

/** Gives a site back; false where the browser keeps it because it is part of the installation. */
export async function giveSiteBack(site: string): Promise<boolean> {
  try {
    return await browser.permissions.remove({ origins: originsOf(site) });
  } catch {
    // Chromium throws for what was given at installation; the answer is the same.
    return false;
  }
}

/** Calls back when a site was allowed or given back, here or in the browser's own settings. */
export function onSitesChanged(listener: () => void): () => void {
  browser.permissions.onAdded.addListener(listener);
  browser.permissions.onRemoved.addListener(listener);
  return () => {
    browser.permissions.onAdded.removeListener(listener);
    browser.permissions.onRemoved.removeListener(listener);
  };
}
