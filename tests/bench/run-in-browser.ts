import path from 'node:path';
import type { BrowserContext } from 'playwright-core';
import { TEST_CHROMIUM_ID } from '../../manifest/test-identity.ts';
import { bundleExtension, writePackage } from '../../scripts/build-extension.ts';
import { launchChromium } from '../../scripts/launch-chromium.ts';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';

declare global {
  interface Window {
    /** When the awaited element was first there, in milliseconds since the page began; set by `timeToFirst`. */
    firstSeenMs?: number;
  }
}

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

/**
 * Opens a file of the extension in a new tab and gives back how many milliseconds the page took until an element
 * matched `css`. The page looks for itself, in every frame, so the answer is right to one frame.
 */
export async function timeToFirst(context: BrowserContext, file: string, css: string): Promise<number> {
  const page = await context.newPage();
  try {
    await page.addInitScript((selector) => {
      const look = () => {
        if (document.querySelector(selector) === null) requestAnimationFrame(look);
        else window.firstSeenMs = performance.now();
      };
      look();
    }, css);
    await page.goto(extensionUrl(file));
    return await page.waitForFunction(() => window.firstSeenMs).then((handle) => handle.jsonValue() as Promise<number>);
  } finally {
    await page.close();
  }
}
