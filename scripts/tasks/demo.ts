import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { bundleExtension, writePackage } from '../build-extension.ts';
import { ensureBrowser } from '../ensure-browser.ts';
import { launchChromium } from '../launch-chromium.ts';
import { openDemo, takePictures } from '../take-pictures.ts';
import { removeFolder, temporaryFolder } from '../temporary-folder.ts';

/** Where the demo's own browser keeps what is done in it, from one demo to the next. */
const KEPT = '.demo-profile';
const PICTURES = '.screenshots';

/**
 * `npm run demo`: an own browser with the extension and an invented dealer's week. What is done there stays for the
 * next time; `-- --fresh` begins anew. Without a screen, or with `-- --headless`, it takes pictures of every screen instead, into
 * `.screenshots` or the folder after `--screenshots`.
 */
export async function run(flags: readonly string[]): Promise<number> {
  ensureBrowser('chromium');
  const headless = flags.includes('--headless') || !hasScreen();
  return headless ? picturesOnly(folderAfter('--screenshots', flags) ?? PICTURES) : show(flags.includes('--fresh'));
}

async function show(fresh: boolean): Promise<number> {
  if (fresh) rmSync(KEPT, { recursive: true, force: true });
  mkdirSync(KEPT, { recursive: true });
  const extension = path.resolve(KEPT, 'extension');
  await writePackage(await bundleExtension(), 'chromium', 'test', extension);
  const context = await launchChromium({ profile: path.resolve(KEPT, 'browser'), extension, window: true });
  const closed = new Promise((resolve) => context.once('close', resolve));
  const page = await openDemo(context);
  await page.bringToFront();
  console.log('The demo is open. Close its browser to end it; npm run demo -- --fresh starts over.');
  await closed;
  return 0;
}

async function picturesOnly(folder: string): Promise<number> {
  const own = temporaryFolder();
  try {
    const extension = path.join(own, 'extension');
    await writePackage(await bundleExtension(), 'chromium', 'test', extension);
    const context = await launchChromium({ profile: path.join(own, 'browser'), extension, window: false });
    const complaints = await takePictures(context, folder).finally(() => context.close());
    for (const complaint of complaints) console.error(`The page complained: ${complaint}`);
    console.log(
      `There is no screen to show the demo on, or none was wanted. Its pictures are in ${path.resolve(folder)}.`,
    );
    return complaints.length === 0 ? 0 : 1;
  } finally {
    removeFolder(own);
  }
}

function hasScreen(): boolean {
  return process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

function folderAfter(flag: string, flags: readonly string[]): string | undefined {
  const at = flags.indexOf(flag);
  return at < 0 ? undefined : flags[at + 1];
}
