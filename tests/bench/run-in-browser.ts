import path from 'node:path';
import { build } from 'esbuild';
import type { BrowserContext, CDPSession, Page } from 'playwright-core';
import { TEST_CHROMIUM_ID } from '../../manifest/test-identity.ts';
import { bundleExtension, writePackage } from '../../scripts/build-extension.ts';
import { launchChromium } from '../../scripts/launch-chromium.ts';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import type { BOOKS_ADDED_UP, FOLDERS_SHOWN } from '../../src/views/books/folders-shown.ts';
import type { LOTS_SHOWN } from '../../src/views/lots/lots-shown.ts';
import { ChromiumPopup } from '../browser/drivers/chromium-popup.ts';
import { waitUntil } from '../browser/drivers/wait-until.ts';

/** A background in the middle of a long read is ended only after it. */
const STOPPING_MS = 120_000;
const PAUSE_MS = 1_000;
const ASK_EVERY_MS = 700;

/** The address of a file of the extension. */
export function extensionUrl(file: string): string {
  return `chrome-extension://${TEST_CHROMIUM_ID}/${file}`;
}

/** Runs `measure` in Chromium with the extension as it is now, on a profile of its own. */
export async function withChromium<Result>(measure: (context: BrowserContext) => Promise<Result>): Promise<Result> {
  const own = temporaryFolder();
  try {
    const extension = path.join(own, 'extension');
    await writePackage(await bundleExtension(), 'chromium', 'test', extension);
    const context = await launchChromium({ profile: path.join(own, 'browser'), extension, window: false });
    return await measure(context).finally(() => context.close());
  } finally {
    removeFolder(own);
  }
}

/** What a measurement waits for: the mark of our own pages, or the first paint of a page without a program. */
type Sight = typeof LOTS_SHOWN | typeof FOLDERS_SHOWN | typeof BOOKS_ADDED_UP | 'first-contentful-paint';

/**
 * Opens a file of the extension in a new tab while no page of it is open and its background is stopped, as when the
 * buyer comes back to it. Gives back how many milliseconds it took until that could be seen.
 */
export async function timeToOpen(context: BrowserContext, file: string, sight: Sight): Promise<number> {
  const protocol = await browserProtocol(context);
  await stopBackground(protocol);
  const opened = context.waitForEvent('page');
  const asked = performance.timeOrigin + performance.now();
  await protocol.send('Target.createTarget', { url: extensionUrl(file) });
  const page = await opened;
  // Asked afterwards and seldom: a question to a page that is just being loaded holds it up.
  const seen = await waitUntil('the page to be drawn', async () => {
    await new Promise((resolve) => setTimeout(resolve, ASK_EVERY_MS));
    return page.evaluate(seenAt, sight);
  });
  await page.close();
  await protocol.detach();
  return seen - asked;
}

/** As timeToOpen, for what opens under the toolbar button. */
export async function timeToPopUp(context: BrowserContext, file: string, sight: Sight): Promise<number> {
  const protocol = await browserProtocol(context);
  await stopBackground(protocol);
  const { targetInfos } = await protocol.send('Target.getTargets', { filter: [{ type: 'tab' }] });
  const tab = targetInfos[0];
  if (tab === undefined) throw new Error('there is no tab to open the popup in');
  const action = { id: TEST_CHROMIUM_ID, targetId: tab.targetId };
  const asked = performance.timeOrigin + performance.now();
  // The command is newer than the typings of the protocol.
  await protocol.send('Extensions.triggerAction' as 'Target.activateTarget', action);
  const popup = await waitUntil('the popup to open', async () => {
    const all = await protocol.send('Target.getTargets', { filter: [{ type: 'page' }] });
    return all.targetInfos.find(({ url }) => url === extensionUrl(file));
  });
  const surface = await ChromiumPopup.attach(protocol, popup.targetId);
  const seen = await surface.until(seenAt, sight);
  await surface.close();
  await waitUntil('the popup to close', async () => !(await surface.isOpen()));
  await protocol.detach();
  return seen - asked;
}

/** Runs in a page: when that was first seen, in milliseconds since 1970; null before. */
function seenAt(sight: string): number | null {
  const [entry] = performance.getEntriesByName(sight);
  return entry === undefined ? null : performance.timeOrigin + entry.startTime;
}

async function browserProtocol(context: BrowserContext): Promise<CDPSession> {
  const protocol = await context.browser()?.newBrowserCDPSession();
  if (protocol === undefined) throw new Error('Chromium gave no connection of its own to talk to');
  return protocol;
}

async function stopBackground(protocol: CDPSession): Promise<void> {
  const stopped = async () => {
    const { targetInfos } = await protocol.send('Target.getTargets', { filter: [{ type: 'service_worker' }] });
    for (const { targetId } of targetInfos) await protocol.send('Target.closeTarget', { targetId });
    // One that was ended in the middle of an event is started again for it, and must get to its end then.
    if (targetInfos.length > 0) await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    return targetInfos.length === 0;
  };
  await waitUntil('the background to stop', stopped, STOPPING_MS);
}

/** Opens a page of the extension without any screen, and runs a program of tests/bench/programs in it. */
export async function openProgram(context: BrowserContext, file: string): Promise<Page> {
  const { outputFiles } = await build({
    entryPoints: [`tests/bench/programs/${file}`],
    bundle: true,
    minify: true,
    format: 'iife',
    write: false,
  });
  const page = await context.newPage();
  await page.goto(extensionUrl('bare-pages/bare.html'));
  for (const { text } of outputFiles) await page.evaluate(text);
  return page;
}
