import browser from 'webextension-polyfill';
import type { Refusal } from '../domain/outcome.ts';

/** What Firefox has for it, and the typings of both browsers do not know. */
interface WithData {
  readonly data_collection?: readonly string[];
}
interface WithWanted {
  readonly browser_specific_settings?: {
    readonly gecko?: { readonly data_collection_permissions?: { readonly optional?: readonly string[] } };
  };
}

const REFUSED: Refusal = {
  reason: 'no-consent',
  message:
    'Firefox does not let Headroom send data, so nothing is sent to the team or fetched from it. To allow it, open Add-ons in Firefox’s menu, then Headroom, then Permissions and data.',
};

/** The kinds of data that the manifest names for a team; none in Chromium, which has no such question. */
function wanted(): readonly string[] {
  // Chromium's page without a window can't even read the manifest.
  const runtime = browser.runtime as { readonly getManifest?: () => unknown };
  const { browser_specific_settings: settings } = (runtime.getManifest?.() ?? {}) as WithWanted;
  return settings?.gecko?.data_collection_permissions?.optional ?? [];
}

/**
 * Asks the user whether data may leave this browser; null for yes. To be called straight from his click, or the browser does not
 * ask. Once he said yes it answers without asking.
 */
export async function askToSend(): Promise<Refusal | null> {
  const kinds = wanted();
  if (kinds.length === 0) return null;
  const asked = { data_collection: kinds } as unknown as Parameters<typeof browser.permissions.request>[0];
  return (await browser.permissions.request(asked)) ? null : REFUSED;
}

/** Whether data may leave this browser as it is now, since that can be turned off in the browser's settings; null for yes. */
export async function mayNotSend(): Promise<Refusal | null> {
  const kinds = wanted();
  if (kinds.length === 0) return null;
  const { data_collection: given = [] } = (await browser.permissions.getAll()) as WithData;
  return kinds.every((kind) => given.includes(kind)) ? null : REFUSED;
}
