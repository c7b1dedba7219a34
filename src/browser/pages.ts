import { api } from './extension-api.ts';

const COMPANION = 'options-page/index.html';

/** Brings the companion page to the front at `route` (such as `#/lots`), in the tab that already shows it if there is one. */
export async function openCompanion(route: string): Promise<void> {
  const url = api.runtime.getURL(COMPANION);
  // Only our own pages are found this way, so no permission to see other tabs is needed.
  const contexts =
    typeof api.runtime.getContexts === 'function' ? await api.runtime.getContexts({ contextTypes: ['TAB'] }) : [];
  const open = contexts.find((context) => context.documentUrl?.startsWith(url));
  if (open !== undefined && open.tabId >= 0) {
    await api.tabs.update(open.tabId, { active: true, url: url + route });
    await api.windows.update(open.windowId, { focused: true });
    return;
  }
  await api.tabs.create({ url: url + route });
}
